//! Who sells a material, as it is printed, and what of that is open.

use style::Supply;
use words::{Given, Key, key, say};

use super::context::Context;
use super::open::ask;
use crate::{Ask, Who};

/// "Fenmill Weavers, article TL-475", or as much of it as is stated; `more` is what else identifies it.
pub(super) fn supply(context: &Context<'_>, of: &Supply, more: Option<Given>) -> String {
    let article = (!of.article.is_empty()).then(|| {
        let article = of.article.as_str();
        Given::from(say::PapersArticle { article })
    });
    let supplier = (!of.supplier.is_empty()).then(|| Given::from(of.supplier.as_str()));
    let told: Vec<Given> = [supplier, article, more].into_iter().flatten().collect();
    context.say.putting(&Given::List(told))
}

/// What whoever buys it lacks: one question for all that is open of one material.
pub(super) fn open(context: &Context<'_>, of: &Supply, more: &[(Key, bool)]) -> Option<Ask> {
    let own = [
        (key::PAPERS_SUPPLIER, of.supplier.is_empty()),
        (key::PAPERS_ARTICLE_NUMBER, of.article.is_empty()),
    ];
    let open = own.iter().chain(more).filter(|(_, open)| *open);
    let open: Vec<Given> = open.map(|(what, _)| (*what).into()).collect();
    (!open.is_empty()).then(|| ask(context, Who::Buyer, Given::List(open)))
}

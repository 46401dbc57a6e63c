//! Conversations with whoever connects: each ends when its other end does, when the bench does, or when what it was
//! about to ask does not come.

use std::io;
use std::time::Duration;

use axum::Router;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::watch;
use tokio::task::JoinSet;

/// How long is waited when the system gives no more connections.
const BREATH: Duration = Duration::from_secs(1);

/// Answers on a listener until `until` is done; what is being answered then is finished first. Whoever connects and does
/// not say all of what it asks within `patience` is not waited for: connections are few, and one that says nothing is as
/// good as none.
pub(crate) async fn answer(
    listener: TcpListener,
    router: Router,
    patience: Duration,
    until: impl Future<Output = ()> + Send + 'static,
) {
    let mut http = http1::Builder::new();
    http.timer(TokioTimer::new()).header_read_timeout(patience);
    let (end, ended) = watch::channel(());
    let mut open = JoinSet::new();
    tokio::pin!(until);
    loop {
        tokio::select! {
            () = &mut until => break,
            stream = connected(&listener) => {
                open.spawn(conversation(http.clone(), stream, router.clone(), ended.clone()));
            }
            Some(_) = open.join_next(), if !open.is_empty() => {}
        }
    }
    drop((listener, end));
    while open.join_next().await.is_some() {}
}

/// The next who connects.
async fn connected(listener: &TcpListener) -> TcpStream {
    loop {
        match listener.accept().await {
            Ok((stream, _)) => return stream,
            // Gone again before it was heard.
            Err(error) if is_theirs(&error) => {}
            // As when this program may open no more: some will end meanwhile.
            Err(_) => tokio::time::sleep(BREATH).await,
        }
    }
}

fn is_theirs(error: &io::Error) -> bool {
    use io::ErrorKind::{ConnectionAborted, ConnectionRefused, ConnectionReset};
    matches!(
        error.kind(),
        ConnectionAborted | ConnectionRefused | ConnectionReset
    )
}

async fn conversation(
    http: http1::Builder,
    stream: TcpStream,
    router: Router,
    mut ended: watch::Receiver<()>,
) {
    let connection = http.serve_connection(TokioIo::new(stream), TowerToHyperService::new(router));
    tokio::pin!(connection);
    let over = tokio::select! {
        over = connection.as_mut() => Some(over),
        _ = ended.changed() => None,
    };
    if over.is_none() {
        connection.as_mut().graceful_shutdown();
        // Whoever breaks off has nobody to tell.
        let _ = connection.await;
    }
}

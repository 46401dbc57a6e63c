//! Putting the bench on a loopback port.

use std::io::Write;
use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::path::PathBuf;
use std::thread::JoinHandle;

use axum::Router;
use axum::middleware::from_fn_with_state;
use tokio::sync::oneshot;
use words::Words;

use crate::connections;
use crate::opening::{self, Opening};
use crate::router::router;
use crate::state::Bench;

/// The port tried first when none is asked for.
pub const USUAL_PORT: u16 = 7461;

/// What a bench needs to be told.
#[derive(Clone, Debug)]
pub struct Options {
    /// The collection's folder.
    pub folder: PathBuf,
    /// The loopback port; 0 lets the system choose. `None` takes [`USUAL_PORT`], or another when that is taken.
    pub port: Option<u16>,
    /// The key that opens the pages, letters and digits; `None` makes a new random one.
    pub key: Option<String>,
}

/// Why the bench did not start.
#[derive(Debug, thiserror::Error)]
pub enum BenchError {
    /// The folder is no collection that can be read.
    #[error(transparent)]
    Collection(#[from] style::Report),
    /// The key cannot be part of an address and a cookie.
    #[error("{}", self.said(Words::english()))]
    Key,
    /// The system gave no random bytes for a key.
    #[error("{}", self.said(Words::english()))]
    Random(String),
    /// The port is taken or not allowed.
    #[error("{}", self.said(Words::english()))]
    Port {
        /// Which.
        port: u16,
        /// What the system said.
        source: std::io::Error,
    },
    /// The system gave no thread or socket.
    #[error("{}", self.said(Words::english()))]
    System(#[from] std::io::Error),
}

impl BenchError {
    /// Why, in some words; shown plainly it is in English, like all that the program says of itself.
    #[must_use]
    pub fn said(&self, say: &Words) -> String {
        match self {
            Self::Collection(report) => report.to_string(),
            Self::Key => say.start_key().to_owned(),
            Self::Random(why) => say.start_random(why),
            Self::Port { port, source } => say.say(words::say::StartPort {
                port: port.to_string(),
                why: source.to_string(),
            }),
            Self::System(source) => say.start_system(source),
        }
    }
}

/// A bench that is running, until it is stopped or dropped.
#[derive(Debug)]
pub struct Running {
    /// The address to open, with the key in it.
    pub url: String,
    /// The same for whoever starts a browser: good for one visit, and without the key, because every user of the machine
    /// can read what a program was started with.
    pub opens: String,
    /// Where it listens; always on 127.0.0.1.
    pub addr: SocketAddr,
    /// The thread it runs in.
    pub join: JoinHandle<std::io::Result<()>>,
    stop: oneshot::Sender<()>,
}

impl Running {
    /// Runs until the process is ended.
    ///
    /// # Errors
    /// What the system said when serving ended.
    pub fn wait(self) -> std::io::Result<()> {
        let Self { join, stop, .. } = self;
        let ended = join.join().unwrap_or(Ok(()));
        drop(stop);
        ended
    }

    /// Stops taking requests and waits for those being answered.
    ///
    /// # Errors
    /// What the system said when serving ended.
    pub fn stop(self) -> std::io::Result<()> {
        let Self { join, stop, .. } = self;
        // A bench that has ended already hears nothing, which is as well.
        let _ = stop.send(());
        join.join().unwrap_or(Ok(()))
    }
}

/// Starts a bench in a thread of its own. Each change and the time it took is told on standard error.
///
/// # Errors
/// The folder is no collection, or there is no port, key or thread to be had.
pub fn start(options: Options) -> Result<Running, BenchError> {
    // A folder with nothing in it is where a collection begins; one that is not there is a slip of the pen.
    if !(options.folder.is_dir() && style::can_begin_in(&options.folder)) {
        style::load_collection(&options.folder)?;
    }
    let key = match options.key {
        Some(key) if is_plain(&key) => key,
        Some(_) => return Err(BenchError::Key),
        None => random_key()?,
    };
    let listener = listen(options.port)?;
    let addr = listener.local_addr()?;
    listener.set_nonblocking(true)?;
    let url = format!("http://{addr}/?key={key}");
    let once = random_key()?;
    let opens = format!("http://{addr}/?once={once}");
    let opening = Opening::new(once, &key);
    let bench = Bench::telling(options.folder, key, addr.port(), |line| {
        // Who started it may have closed what it would read this from.
        let _ = writeln!(std::io::stderr(), "{line}");
    });
    let (stop, stopped) = oneshot::channel();
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(2)
        .enable_all()
        .build()?;
    let join = std::thread::Builder::new()
        .name("bench".to_owned())
        .spawn(move || {
            runtime.block_on(async move {
                let listener = tokio::net::TcpListener::from_std(listener)?;
                let pages = router(bench.clone()).layer(from_fn_with_state(opening, opening::open));
                answering(listener, pages, bench, async {
                    // A sender that is gone means the same as one that speaks.
                    let _ = stopped.await;
                })
                .await;
                Ok(())
            })
        })?;
    Ok(Running {
        url,
        opens,
        addr,
        join,
        stop,
    })
}

/// Serves a bench on a listener until `until` is done; requests being answered are finished first.
pub async fn serve(
    listener: tokio::net::TcpListener,
    bench: Bench,
    until: impl Future<Output = ()> + Send + 'static,
) {
    answering(listener, router(bench.clone()), bench, until).await;
}

async fn answering(
    listener: tokio::net::TcpListener,
    pages: Router,
    bench: Bench,
    until: impl Future<Output = ()> + Send + 'static,
) {
    connections::answer(listener, pages, bench.patience(), until).await;
    bench.works().cancel_all();
}

fn listen(port: Option<u16>) -> Result<TcpListener, BenchError> {
    let at = |port| TcpListener::bind((Ipv4Addr::LOCALHOST, port));
    let asked = port.unwrap_or(USUAL_PORT);
    match (at(asked), port) {
        (Ok(listener), _) => Ok(listener),
        (Err(source), Some(port)) => Err(BenchError::Port { port, source }),
        (Err(_), None) => at(0).map_err(|source| BenchError::Port { port: 0, source }),
    }
}

fn is_plain(key: &str) -> bool {
    (16..=128).contains(&key.len()) && key.bytes().all(|byte| byte.is_ascii_alphanumeric())
}

/// 128 random bits as hex digits.
fn random_key() -> Result<String, BenchError> {
    let mut bytes = [0; 16];
    getrandom::fill(&mut bytes).map_err(|error| BenchError::Random(error.to_string()))?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}

//! Floods and trickles, on a real port: what is too much is cut off early, what never comes is not waited for, and
//! meanwhile the bench answers others.

use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::time::Duration;

use bench::{Bench, serve};

use crate::house::KEY;

/// A bench that waits a moment only, and what ends it.
struct Open {
    addr: SocketAddr,
    _end: tokio::sync::oneshot::Sender<()>,
    _folder: tempfile::TempDir,
}

async fn open(patience: Duration) -> Open {
    let folder = tempfile::tempdir().unwrap();
    let collection = folder.path().join("saltmarsh");
    style::write_demo(&collection).unwrap();
    let listener = tokio::net::TcpListener::bind("127.0.0.1:0").await.unwrap();
    let addr = listener.local_addr().unwrap();
    let bench = Bench::new(collection, KEY.to_owned(), addr.port()).waiting(patience);
    let (end, ended) = tokio::sync::oneshot::channel::<()>();
    tokio::spawn(serve(listener, bench, async {
        let _ = ended.await;
    }));
    Open {
        addr,
        _end: end,
        _folder: folder,
    }
}

fn head(addr: SocketAddr, more: &str) -> String {
    format!(
        "POST /style/ferryman/edit HTTP/1.1\r\nHost: {addr}\r\nOrigin: http://{addr}\r\n\
         Cookie: bench-{}={KEY}\r\nContent-Type: application/json\r\n{more}\r\n\r\n",
        addr.port()
    )
}

/// What a request gets as its first line; what the bench no longer reads may be lost.
fn first_line(stream: &mut TcpStream) -> String {
    let mut start = [0; 64];
    let count = stream.read(&mut start).unwrap_or(0);
    let text = String::from_utf8_lossy(&start[..count]).into_owned();
    text.lines().next().unwrap_or_default().to_owned()
}

fn asks_for_the_collection(addr: SocketAddr) -> String {
    let mut stream = TcpStream::connect(addr).unwrap();
    write!(
        stream,
        "GET /?key={KEY} HTTP/1.1\r\nHost: {addr}\r\nConnection: close\r\n\r\n"
    )
    .unwrap();
    let mut text = String::new();
    stream.read_to_string(&mut text).unwrap();
    text
}

/// What is written into a request that says it is a gigabyte, before it is cut off.
fn flood(addr: SocketAddr) -> (usize, String) {
    let mut stream = TcpStream::connect(addr).unwrap();
    stream
        .write_all(head(addr, "Transfer-Encoding: chunked").as_bytes())
        .unwrap();
    let chunk = format!("10000\r\n{}\r\n", "[".repeat(0x10000));
    let mut written = 0;
    while written < 1 << 30 && stream.write_all(chunk.as_bytes()).is_ok() {
        written += chunk.len();
    }
    (written, first_line(&mut stream))
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_gigabyte_is_cut_off_early() {
    let open = open(Duration::from_secs(60)).await;
    let addr = open.addr;
    // Said beforehand, it is refused before a byte of it is sent.
    let told = tokio::task::spawn_blocking(move || {
        let mut stream = TcpStream::connect(addr).unwrap();
        stream
            .write_all(head(addr, "Content-Length: 1073741824").as_bytes())
            .unwrap();
        first_line(&mut stream)
    });
    assert!(told.await.unwrap().contains(" 413 "));
    let (written, line) = tokio::task::spawn_blocking(move || flood(addr))
        .await
        .unwrap();
    // What the bench takes at most, and what the system keeps for both ends of a connection.
    assert!(written < 32 << 20, "{written} bytes were taken");
    assert!(line.is_empty() || line.contains(" 413 "), "{line}");
    let after = tokio::task::spawn_blocking(move || asks_for_the_collection(addr));
    assert!(after.await.unwrap().contains("Saltmarsh Yard"));
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_trickle_holds_nobody_up_and_is_given_up() {
    let open = open(Duration::from_millis(400)).await;
    let addr = open.addr;
    let lines = tokio::task::spawn_blocking(move || {
        let mut trickles: Vec<TcpStream> = (0..64)
            .map(|_| {
                let mut stream = TcpStream::connect(addr).unwrap();
                let start = format!("{}{{\"rev", head(addr, "Content-Length: 500"));
                stream.write_all(start.as_bytes()).unwrap();
                stream
            })
            .collect();
        assert!(asks_for_the_collection(addr).contains("Saltmarsh Yard"));
        trickles.iter_mut().map(first_line).collect::<Vec<_>>()
    });
    for line in lines.await.unwrap() {
        assert!(line.contains(" 408 "), "{line}");
    }
}

/// What is left of a connection that says only part of what it asks: the bench ends it, or this waits a minute.
fn ends(mut stream: TcpStream) -> bool {
    stream
        .set_read_timeout(Some(Duration::from_secs(60)))
        .unwrap();
    let mut said = Vec::new();
    // What was written after the end is answered with a reset.
    match stream.read_to_end(&mut said) {
        Ok(_) => true,
        Err(error) => error.kind() == std::io::ErrorKind::ConnectionReset,
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_hundred_unfinished_questions_are_not_waited_for() {
    let open = open(Duration::from_millis(400)).await;
    let addr = open.addr;
    let ended = tokio::task::spawn_blocking(move || {
        let starts = [
            "",
            "G",
            "GET / HTTP/1.1\r\n",
            "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Long: ",
        ];
        let unfinished: Vec<TcpStream> = (0..100)
            .map(|number| {
                let mut stream = TcpStream::connect(addr).unwrap();
                let start = starts[number % starts.len()];
                stream.write_all(start.as_bytes()).unwrap();
                stream
            })
            .collect();
        // One goes on and on, a letter at a time.
        let mut trickle = TcpStream::connect(addr).unwrap();
        trickle.write_all(b"GET / HTTP/1.1\r\nX-Long: ").unwrap();
        let trickling = std::thread::spawn(move || {
            let letters = (0..6000).all(|_| {
                std::thread::sleep(Duration::from_millis(10));
                trickle.write_all(b"x").is_ok()
            });
            !letters
        });
        assert!(asks_for_the_collection(addr).contains("Saltmarsh Yard"));
        let ended = unfinished.into_iter().map(ends);
        let ended = ended.filter(|ended| *ended).count();
        (ended, trickling.join().unwrap())
    });
    assert_eq!(ended.await.unwrap(), (100, true));
}

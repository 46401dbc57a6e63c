//! The bench on a real port.

#![allow(clippy::unwrap_used)]

use std::io::{Read, Write};
use std::net::TcpStream;

use bench::{BenchError, Options, start};

fn options(folder: &std::path::Path) -> Options {
    Options {
        folder: folder.to_owned(),
        port: Some(0),
        key: None,
    }
}

fn get(addr: std::net::SocketAddr, address: &str) -> String {
    let mut stream = TcpStream::connect(addr).unwrap();
    write!(
        stream,
        "GET {address} HTTP/1.1\r\nHost: {addr}\r\nConnection: close\r\n\r\n"
    )
    .unwrap();
    let mut text = String::new();
    stream.read_to_string(&mut text).unwrap();
    text
}

#[test]
fn it_listens_on_this_machine_only_and_its_address_opens_it() {
    let folder = tempfile::tempdir().unwrap();
    let collection = folder.path().join("saltmarsh");
    style::write_demo(&collection).unwrap();
    let running = start(options(&collection)).unwrap();
    assert!(running.addr.ip().is_loopback());
    let (origin, key) = running.url.split_once("/?key=").unwrap();
    assert_eq!(origin, format!("http://{}", running.addr));
    assert_eq!(key.len(), 32);
    assert!(get(running.addr, &format!("/?key={key}")).contains("Saltmarsh Yard"));
    assert!(get(running.addr, "/").starts_with("HTTP/1.1 403"));
    let addr = running.addr;
    running.stop().unwrap();
    assert!(TcpStream::connect(addr).is_err());
}

#[test]
fn the_address_a_browser_is_started_with_is_good_for_one_visit_and_holds_no_key() {
    let folder = tempfile::tempdir().unwrap();
    let collection = folder.path().join("saltmarsh");
    style::write_demo(&collection).unwrap();
    let running = start(options(&collection)).unwrap();
    let (_, key) = running.url.split_once("key=").unwrap();
    assert!(!running.opens.contains(key));
    let (origin, address) = running.opens.split_at(running.opens.rfind('/').unwrap());
    assert_eq!(origin, format!("http://{}", running.addr));
    // Another word is as good as none, and spends nothing.
    assert!(get(running.addr, "/?once=0123456789abcdef").starts_with("HTTP/1.1 403"));
    let first = get(running.addr, address);
    assert!(first.contains("Saltmarsh Yard"));
    assert!(
        first
            .to_lowercase()
            .contains(&format!("set-cookie: bench-{}={key}", running.addr.port()))
    );
    assert!(get(running.addr, address).starts_with("HTTP/1.1 403"));
    assert!(get(running.addr, &format!("/?key={key}")).contains("Saltmarsh Yard"));
}

#[test]
fn two_starts_have_two_keys() {
    let folder = tempfile::tempdir().unwrap();
    let collection = folder.path().join("saltmarsh");
    style::write_demo(&collection).unwrap();
    let one = start(options(&collection)).unwrap();
    let other = start(options(&collection)).unwrap();
    let key = |url: &str| url.split_once("key=").unwrap().1.to_owned();
    assert_ne!(key(&one.url), key(&other.url));
    let taken = start(Options {
        port: Some(one.addr.port()),
        ..options(&collection)
    });
    assert!(matches!(taken, Err(BenchError::Port { port, .. }) if port == one.addr.port()));
}

#[test]
fn what_cannot_be_served_is_told_before_it_starts() {
    let folder = tempfile::tempdir().unwrap();
    // A folder with nothing in it is where a collection can begin; any other has to be one.
    start(options(folder.path())).unwrap().stop().unwrap();
    std::fs::write(folder.path().join("letters.txt"), "something else").unwrap();
    let error = start(options(folder.path())).unwrap_err();
    assert!(error.to_string().contains("collection.toml"), "{error}");
    let collection = folder.path().join("saltmarsh");
    style::write_demo(&collection).unwrap();
    for key in [
        "short",
        "with space in the middle",
        "0123456789abcdef;Path=/",
    ] {
        let refused = start(Options {
            key: Some(key.to_owned()),
            ..options(&collection)
        });
        assert!(matches!(refused, Err(BenchError::Key)), "{key}");
    }
}

/// Sends a request that says it holds a gigabyte and goes on sending; gives how much was taken.
fn taken_of_a_gigabyte(addr: std::net::SocketAddr, key: &str, address: &str, said: bool) -> usize {
    const GIGABYTE: usize = 1 << 30;
    let mut stream = TcpStream::connect(addr).unwrap();
    let length = if said {
        format!("Content-Length: {GIGABYTE}")
    } else {
        "Transfer-Encoding: chunked".to_owned()
    };
    write!(
        stream,
        "POST {address} HTTP/1.1\r\nHost: {addr}\r\nOrigin: http://{addr}\r\nSec-Fetch-Site: same-origin\r\n\
         Cookie: bench-{}={key}\r\n{length}\r\n\r\n",
        addr.port()
    )
    .unwrap();
    let piece = vec![b'x'; 1 << 16];
    let mut sent = 0;
    while sent < GIGABYTE {
        let written = if said {
            stream.write_all(&piece)
        } else {
            write!(stream, "{:x}\r\n", piece.len())
                .and_then(|()| stream.write_all(&piece))
                .and_then(|()| stream.write_all(b"\r\n"))
        };
        if written.is_err() {
            break;
        }
        sent += piece.len();
    }
    sent
}

#[test]
fn a_gigabyte_is_refused_long_before_its_end() {
    /// The largest upload, and what the system itself keeps on the way.
    const MOST: usize = 48 << 20;
    let folder = tempfile::tempdir().unwrap();
    let collection = folder.path().join("saltmarsh");
    style::write_demo(&collection).unwrap();
    let running = start(options(&collection)).unwrap();
    let key = running.url.split_once("key=").unwrap().1;
    for address in [
        "/style/ferryman/art?file=a.svg",
        "/bring/look?file=a.dxf&figure=men&fit=slim",
        "/bring/make?file=a.dxf&figure=men&fit=slim",
        "/new",
        "/style/ferryman/cloths",
    ] {
        for said in [true, false] {
            let taken = taken_of_a_gigabyte(running.addr, key, address, said);
            assert!(taken < MOST, "{address}: {taken} bytes");
        }
    }
    assert!(get(running.addr, &format!("/?key={key}")).contains("Saltmarsh Yard"));
}

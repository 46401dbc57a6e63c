//! The bench is killed while several tabs change a style, and started again: every change that was said to be saved is
//! there, and undo goes all the way back.

use std::fs;
use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};

use serde_json::{Value, json};
use style::Loaded;
use suite::browser::{Served, started};
use suite::fellwork::program;

const KEY: &str = "killedAndStartedAgain0";
/// How often the bench is killed.
const KILLS: usize = 4;
/// How many changes are saved before each kill.
const BEFORE_A_KILL: usize = 5;
/// One tab for each; the values are near the demo's own, so that all are sound.
const FIELDS: [(&str, f64); 4] = [
    ("chart.thigh.value", 62.0),
    ("chart.knee.value", 45.5),
    ("chart.coin_depth.tolerance", 0.3),
    ("chart.loop_width.tolerance", 0.2),
];

/// A port that nobody listens on.
pub fn free_port() -> u16 {
    let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
    listener.local_addr().unwrap().port()
}

/// A bench at a port and with a key of its own.
pub fn bench(collection: &Path, port: u16, key: &str) -> Served {
    let mut command = Command::new(program());
    command.arg("bench").arg(collection).arg("--no-open");
    command.args(["--port", &port.to_string(), "--key", key]);
    let open = |line: &str| line.contains("http://").then(String::new);
    started(command.stderr(Stdio::null()), open).0
}

/// Asks the bench as a page of the demo's style would; `None` when it does not answer to the end.
fn ask(port: u16, action: &str, body: Option<&Value>) -> Option<Value> {
    asked_of(port, KEY, &format!("/style/ferryman/{action}"), body)
}

/// Asks the bench for an address, or sends it something.
pub fn asked_of(port: u16, key: &str, address: &str, body: Option<&Value>) -> Option<Value> {
    let body = body.map(Value::to_string);
    let method = if body.is_some() { "POST" } else { "GET" };
    let body = body.unwrap_or_default();
    let request = format!(
        "{method} {address} HTTP/1.1\r\nhost: 127.0.0.1:{port}\r\norigin: http://127.0.0.1:{port}\r\n\
         cookie: bench-{port}={key}\r\nx-bench: 1\r\ncontent-type: application/json\r\n\
         content-length: {}\r\nconnection: close\r\n\r\n{body}",
        body.len()
    );
    let mut socket = TcpStream::connect(("127.0.0.1", port)).ok()?;
    socket.write_all(request.as_bytes()).ok()?;
    let mut answer = String::new();
    socket.read_to_string(&mut answer).ok()?;
    let (_, body) = answer.split_once("\r\n\r\n")?;
    serde_json::from_str(body).ok()
}

/// The version a page shows; `None` when the bench does not answer.
fn revision(port: u16) -> Option<String> {
    let answer = ask(port, "fragments", None)?;
    Some(answer["revision"].as_str().unwrap().to_owned())
}

/// A value of a field that no other change writes.
fn value(field: usize, number: usize) -> String {
    let number = f64::from(u32::try_from(number).unwrap());
    format!("{:.3} cm", FIELDS[field].1 + number / 1000.0)
}

/// Changes one value over and over until the bench does not answer; every change that was said to be done is noted.
fn tab(port: u16, field: usize, from: usize, made: &Mutex<Vec<String>>, count: &AtomicUsize) {
    // The other tabs may have brought the kill about before this one was opened.
    let Some(mut revision) = revision(port) else {
        return;
    };
    for number in from.. {
        let value = value(field, number);
        let edits = json!([{ "edit": "set", "path": FIELDS[field].0, "value": value }]);
        let body = json!({ "revision": revision, "edits": edits });
        let Some(answer) = ask(port, "edit", Some(&body)) else {
            return;
        };
        assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
        revision = answer["revision"].as_str().unwrap().to_owned();
        let mut made = made.lock().unwrap_or_else(PoisonError::into_inner);
        made.push(value);
        count.fetch_add(1, Ordering::SeqCst);
    }
}

fn texts(loaded: &Loaded) -> Vec<String> {
    let history = style::history(loaded).unwrap();
    let versions = history.versions().iter();
    versions
        .map(|version| style::read_revision(version).unwrap())
        .collect()
}

#[test]
fn a_killed_bench_has_lost_nothing_that_it_said_was_saved() {
    let folder = tempfile::tempdir().unwrap();
    let collection = folder.path().join("demo");
    let file = style::write_demo(&collection).unwrap();
    let first = fs::read_to_string(&file).unwrap();
    let port = free_port();
    let made = Mutex::new(Vec::new());
    for kill in 0..KILLS {
        let bench = bench(&collection, port, KEY);
        let count = AtomicUsize::new(0);
        // A value in flight when the bench was killed may be there or not, so each round writes others.
        let from = 1 + kill * 100;
        std::thread::scope(|scope| {
            for field in 0..FIELDS.len() {
                let (made, count) = (&made, &count);
                scope.spawn(move || tab(port, field, from, made, count));
            }
            while count.load(Ordering::SeqCst) < BEFORE_A_KILL {
                std::thread::yield_now();
            }
            // SIGKILL: nothing can be tidied up.
            drop(bench);
        });
        let loaded = style::load(&file).unwrap();
        let texts = texts(&loaded);
        let made = made.lock().unwrap_or_else(PoisonError::into_inner);
        for value in made.iter() {
            let known = texts.iter().any(|text| text.contains(value.as_str()));
            assert!(known, "kill {kill}: {value} was said to be saved");
        }
    }
    let bench = bench(&collection, port, KEY);
    let versions = texts(&style::load(&file).unwrap()).len();
    let mut revision = revision(port).unwrap();
    let mut undone = 0;
    loop {
        let body = json!({ "revision": revision });
        let answer = ask(port, "undo", Some(&body)).unwrap();
        if answer["outcome"] == "nothing" {
            break;
        }
        assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
        revision = answer["revision"].as_str().unwrap().to_owned();
        undone += 1;
    }
    drop(bench);
    let made = made.into_inner().unwrap_or_else(PoisonError::into_inner);
    assert!(undone >= made.len(), "{undone} undone of {}", made.len());
    assert_eq!(undone, versions - 1);
    assert_eq!(fs::read_to_string(&file).unwrap(), first);
}

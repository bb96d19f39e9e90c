//! Mutations of a text: what a slip of the hand, a broken transfer and somebody malicious make of it.

use crate::chance::Chance;
use crate::entries::LARGEST;

/// Pieces that parsers have been known to stumble over.
const PIECES: &[&str] = &[
    "&a ",
    "*a",
    "<<: *a",
    "!!binary ",
    "!tag ",
    "? ",
    "- ",
    "- - - ",
    ": ",
    "|",
    ">",
    "|2-",
    "'",
    "\"",
    "\\",
    "%YAML 9.9\n",
    "---\n",
    "...\n",
    "\u{feff}",
    "\r\n",
    "\r",
    "\t",
    "\n",
    "\u{2028}",
    "\u{85}",
    "\u{200b}",
    "\u{202e}",
    "\0",
    "é",
    "²",
    "µ",
    "μ",
    "𝟙",
    "٣",
    "½",
    "#",
    "[",
    "]",
    "{",
    "}",
    ",",
    ";",
    "=",
    "&",
    "%",
    "%00",
    "%zz",
    "+",
    "~",
    "null",
    "true",
    "[]",
    "{}",
    "''",
    "0",
    "-0",
    "1e308",
    "1e-320",
    "-1e308",
    "1e999",
    "1e99999999999",
    "0x10",
    "1_000",
    "9007199254740993",
    "18446744073709551616",
    "99999999999999999999999999999999",
    "nan",
    ".nan",
    "inf",
    "-.inf",
    "1.",
    ".5",
    "1,5",
    "1.2.3",
    "--1",
    "0.1 mm",
    "1e300 km",
    "-5 m/min",
    "100 %",
    "1 g",
    "3 m/s²",
    "5 arcmin",
    "2020-02-30",
];

/// The values that a number is replaced by.
const NUMBERS: &[&str] = &[
    "0",
    "-1",
    "1",
    "2",
    "64",
    "65",
    "1000",
    "100000",
    "1e6",
    "1e9",
    "1e15",
    "1e30",
    "1e100",
    "1e308",
    "1e-9",
    "1e-30",
    "1e-308",
    "5e-324",
    "0.5",
    "0.999999999",
    "4294967296",
    "18446744073709551615",
    "-9223372036854775808",
    "nan",
    "inf",
];

/// How far mutations go.
struct Reach {
    /// The largest text, bytes.
    largest: usize,
    /// What is repeated is doubled fewer times than this.
    doublings: usize,
}

const FAR: Reach = Reach { largest: LARGEST, doublings: 15 };
const NEAR: Reach = Reach { largest: 4096, doublings: 5 };

/// Another text of one or two of these, at most [`LARGEST`] bytes.
pub fn mutated(seeds: &[Vec<u8>], chance: &mut Chance) -> Vec<u8> {
    changed(seeds, &FAR, chance)
}

/// A text of the long run: nineteen of twenty are small texts with small changes, the others whole ones that may become large.
pub fn drawn(whole: &[Vec<u8>], small: &[Vec<u8>], chance: &mut Chance) -> Vec<u8> {
    match chance.below(20) {
        0 => changed(whole, &FAR, chance),
        _ => changed(small, &NEAR, chance),
    }
}

fn changed(seeds: &[Vec<u8>], reach: &Reach, chance: &mut Chance) -> Vec<u8> {
    let mut text = chance.one(seeds).clone();
    for _ in 0..1 + chance.below(4) {
        change(&mut text, chance.one::<Vec<u8>>(seeds), reach, chance);
        text.truncate(reach.largest);
    }
    text
}

fn change(text: &mut Vec<u8>, with: &[u8], reach: &Reach, chance: &mut Chance) {
    let at = chance.below(text.len() + 1);
    match chance.below(12) {
        0 => {
            if let Some(byte) = text.get_mut(at) {
                *byte ^= 1 << chance.below(8);
            }
        }
        1 => text.truncate(at),
        2 => drop(text.drain(at..part(text, at, chance))),
        3 => {
            // the head of one and the tail of another
            text.truncate(at);
            text.extend_from_slice(&with[chance.below(with.len() + 1)..]);
        }
        4 => {
            let piece = text[at..part(text, at, chance)].to_vec();
            let most = 1 << chance.below(reach.doublings.min(12));
            let times = 1 + chance.below(most);
            insert(text, at, &piece.repeat(times.min(reach.largest / piece.len().max(1))), reach);
        }
        5 => insert(text, at, (*chance.one(PIECES)).as_bytes(), reach),
        6 => {
            let times = 1 << chance.below(reach.doublings);
            insert(text, at, chance.one(PIECES).repeat(times).as_bytes(), reach);
        }
        7 | 8 => {
            let by = *chance.one::<&str>(NUMBERS);
            number(text, at, by);
        }
        9 => lines(text, chance),
        10 => {
            let (from, to) = *chance.one(&[
                ("\n", "\r\n"),
                ("\n", "\r"),
                (" ", "\t"),
                (" ", "\u{a0}"),
                (".", ","),
                (":", "："),
                (";", ","),
            ]);
            *text = String::from_utf8_lossy(text).replace(from, to).into_bytes();
        }
        _ => {
            // deeper by some levels
            let (open, close) = *chance.one(&[
                ("[", "]"),
                ("{a: ", "}"),
                ("{\"a\":", "}"),
                ("- ", ""),
                ("? ", ""),
                ("'", "'"),
                ("\"", "\""),
            ]);
            let times = 1 << chance.below(reach.doublings.min(14));
            insert(text, at, &[open.repeat(times), close.repeat(times)].concat().into_bytes(), reach);
        }
    }
}

/// The end of a piece that begins here.
fn part(text: &[u8], at: usize, chance: &mut Chance) -> usize {
    let most = 1 << chance.below(10);
    (at + chance.below(most)).min(text.len())
}

fn insert(text: &mut Vec<u8>, at: usize, piece: &[u8], reach: &Reach) {
    let room = reach.largest.saturating_sub(text.len());
    text.splice(at..at, piece[..piece.len().min(room)].iter().copied());
}

/// Replaces the first number at or behind a place.
fn number(text: &mut Vec<u8>, at: usize, by: &str) {
    let Some(begin) = text[at..].iter().position(u8::is_ascii_digit).map(|begin| at + begin) else { return };
    let digit = |byte: &u8| byte.is_ascii_digit() || *byte == b'.';
    let end = text[begin..].iter().position(|byte| !digit(byte)).map_or(text.len(), |end| begin + end);
    text.splice(begin..end, by.bytes());
}

/// Doubles, drops, moves or indents a line.
fn lines(text: &mut Vec<u8>, chance: &mut Chance) {
    let mut lines: Vec<Vec<u8>> = text.split(|byte| *byte == b'\n').map(<[u8]>::to_vec).collect();
    let (one, other) = (chance.below(lines.len()), chance.below(lines.len()));
    match chance.below(4) {
        0 => lines.insert(other, lines[one].clone()),
        1 => drop(lines.remove(one)),
        2 => lines.swap(one, other),
        _ => drop(lines[one].splice(0..0, b"  ".iter().copied())),
    }
    *text = lines.join(&b'\n');
}

#[test]
fn mutations_stay_within_their_size_and_hang_on_the_seed_alone() {
    let seeds = vec![b"travel: 3 m\nspeed: [1, 2]\n".to_vec(), vec![b'x'; LARGEST], Vec::new()];
    let run = || {
        let mut chance = Chance(7);
        (0..2000).map(|_| mutated(&seeds, &mut chance)).collect::<Vec<_>>()
    };
    let texts = run();
    assert!(texts.iter().all(|text| text.len() <= LARGEST));
    assert!(texts == run(), "the same seed gives the same texts");
    let mut different = texts.clone();
    different.sort();
    different.dedup();
    assert!(different.len() > 1000, "{} texts differ", different.len());
}

#[test]
fn of_twenty_texts_that_are_drawn_nineteen_are_small() {
    let (whole, small) = (vec![vec![b'w'; 9000]], vec![b"small".to_vec()]);
    let of_whole =
        |number: u64| drawn(&whole, &small, &mut Chance(number)).iter().filter(|byte| **byte == b'w').count();
    let drawn = (0..2000).filter(|number| of_whole(*number) > 100).count();
    assert!((60..140).contains(&drawn), "{drawn} of 2000 are whole");
}

//! Texts that are small and ask for much: the first that somebody malicious tries.

use crate::entries::LARGEST;

/// All of them with a name.
pub fn bombs() -> Vec<(&'static str, Vec<u8>)> {
    let all: Vec<(&'static str, String)> = vec![
        ("nothing", String::new()),
        ("aliases that multiply", aliases()),
        ("one long text a thousand times", long_alias()),
        ("an alias of itself", "a: &a [*a, *a]\n".into()),
        ("merged maps", "a: &a { b: 1 }\nc: { <<: *a, <<: *a }\n<<: *a\n".into()),
        ("brackets", "[".repeat(LARGEST)),
        ("closed brackets", "[".repeat(900) + &"]".repeat(900)),
        ("closed braces", "{a: ".repeat(900) + &"}".repeat(900)),
        ("braces", "{a: ".repeat(LARGEST / 4)),
        ("braces of JSON", "{\"record\":".repeat(LARGEST / 10)),
        ("items in items", "- ".repeat(LARGEST / 2)),
        ("keys in keys", "? ".repeat(LARGEST / 2)),
        ("anchors", "&a ".repeat(LARGEST / 3)),
        ("tags", "!a ".repeat(LARGEST / 3)),
        ("groups in groups", groups()),
        ("many keys", (0..6000).map(|key| format!("k{key}: {key}\n")).collect()),
        ("one key", "machine: x\n".repeat(LARGEST / 11)),
        ("axes", "axes:\n".to_string() + &(0..4000).map(|axis| format!("  a{axis}: {{}}\n")).collect::<String>()),
        ("a long number", "9".repeat(LARGEST)),
        ("a long fraction", "0.".to_string() + &"3".repeat(LARGEST - 2)),
        ("a long exponent", "1e".to_string() + &"9".repeat(LARGEST - 2)),
        ("a long unit", "1 ".to_string() + &"m".repeat(LARGEST - 2)),
        ("an open quote", "a: \"".to_string() + &"x\n".repeat(LARGEST / 2 - 2)),
        ("quotes", "'".repeat(LARGEST)),
        ("colons", "a: ".repeat(LARGEST / 3)),
        ("hyphens", "---\n".repeat(LARGEST / 4)),
        ("percents", "%".repeat(LARGEST)),
        ("blanks", " ".repeat(LARGEST)),
        ("tabs", "\t".repeat(LARGEST)),
        ("line ends", "\n".repeat(LARGEST)),
        ("carriage returns", "\r".repeat(LARGEST)),
        ("comments", "#\n".repeat(LARGEST / 2)),
        ("zero bytes", "\0".repeat(LARGEST)),
        ("marks of byte order", "\u{feff}".repeat(LARGEST / 3)),
        ("surroundings of many words", surroundings()),
        ("letters of four bytes", "𝟙".repeat(LARGEST / 4)),
        ("combining letters", "e\u{301}".repeat(LARGEST / 3)),
        ("columns", ";".repeat(LARGEST)),
        ("commas", ",".repeat(LARGEST)),
        ("rows", "1\n".repeat(LARGEST / 2)),
        ("a wide head and many rows", ";a".repeat(LARGEST / 4) + &"\n1;1".repeat(LARGEST / 8)),
        ("pairs", "a=1&".repeat(LARGEST / 4)),
        ("rows of a form", (0..2500).map(|row| format!("waivers.{row}.rule=x&")).collect()),
        ("axes of a form", (0..3000).map(|axis| format!("axes.{axis}.name=x&")).collect()),
        ("entries that lack keys in many variants", lacking()),
        ("wrong words in one line", "applies-to: [x".to_string() + &",51".repeat(LARGEST / 3 - 6) + "]"),
        ("a block", "a: |\n".to_string() + &"  x\n".repeat(LARGEST / 4 - 2)),
    ];
    let mut all: Vec<(&'static str, Vec<u8>)> = all.into_iter().map(|(name, text)| (name, text.into_bytes())).collect();
    all.push(("bytes that are no text", vec![0xff; LARGEST]));
    all.push(("text of two bytes a letter", "a: 1\n".repeat(6000).encode_utf16().flat_map(u16::to_le_bytes).collect()));
    all.iter_mut().for_each(|(_, bytes)| bytes.truncate(LARGEST));
    all
}

/// A brief that is whole and whose surroundings are thousands of words, each looked up in the catalogue.
fn surroundings() -> String {
    let axis = "{ direction: horizontal, travel: 1 m, moved-mass: 9 kg, speed: 9 m/min, acceleration: 1 m/s² }";
    let words = "a- ".repeat(LARGEST / 3 - 100);
    format!("machine: x\nenvironment: \"{words}\"\naxes:\n  x: {axis}\n")
}

/// Ten to the power nine texts, if every alias were written out.
fn aliases() -> String {
    let mut text = String::from("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
    for level in 1..9 {
        let below = format!("*a{}", level - 1);
        text.push_str(&format!("a{level}: &a{level} [{}]\n", [below.as_str(); 10].join(", ")));
    }
    text
}

/// 30 MB, if every alias were written out.
fn long_alias() -> String {
    format!("a: &a {}\nb: [{}]\n", "x".repeat(30_000), vec!["*a"; 1000].join(", "))
}

/// Groups as deep as the size allows.
fn groups() -> String {
    (0..350).map(|level| format!("{}a:\n", " ".repeat(level))).collect()
}

/// As many parts as a file may hold, none of them whole.
fn lacking() -> String {
    let lines = |word: &str, name: &str, count: usize| -> String {
        (0..count).map(|at| format!("  - {{ {word}: {name}{at} }}\n")).collect()
    };
    format!(
        "kind: gearbox\nbasis: b\nvariants:\n{}entries:\n{}",
        lines("suffix", "-v", 66),
        lines("designation", "g", 300)
    )
}

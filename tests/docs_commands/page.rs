//! What a page of the documents holds that can be run: command lines, edits of a brief, files, and what is shown.

/// One thing to do, in the order of the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Step {
    /// A command line of the program.
    Run(Call),
    /// A line of a shell that is not of the program.
    Other(String),
    /// Lines of the brief that the page changes, before and after.
    Edit(String, String),
    /// A file that the page writes: name and text.
    Write(String, String),
    /// What the page shows of the output of the command before, in pieces that are cut by an ellipsis.
    Shown(Vec<String>),
}

/// One command line of the program.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Call {
    /// As it stands in the page, without its comment.
    pub line: String,
    /// Its words after the name of the program.
    pub words: Vec<String>,
    /// The file that its output goes to.
    pub out: Option<String>,
    /// The exit status that the page says; 0 where it says none.
    pub status: i32,
}

const PROGRAM: [&str; 2] = ["axiswright ", "cargo run --release -- "];

/// Everything in a page that can be run, from top to bottom.
pub fn steps(page: &str) -> Vec<Step> {
    let mut steps = Vec::new();
    let mut lines = page.lines().peekable();
    while let Some(line) = lines.next() {
        if let Some(language) = line.strip_prefix("```") {
            let block: Vec<&str> = lines.by_ref().take_while(|line| !line.starts_with("```")).collect();
            match language {
                "sh" => steps.extend(commands(&block)),
                "diff" => steps.extend(edits(&block)),
                "text" => steps.extend(shown(&block.join(" "))),
                "yaml" => steps.extend(file(&block)),
                _ => {}
            }
        } else if line.starts_with("> ") {
            let mut quoted = vec![line];
            while let Some(next) = lines.next_if(|line| line.starts_with('>')) {
                quoted.push(next);
            }
            steps.extend(shown(&quoted.iter().map(|line| line[1..].trim()).collect::<Vec<_>>().join(" ")));
        }
    }
    steps
}

fn commands(block: &[&str]) -> Vec<Step> {
    let joined = block.join("\n").replace("\\\n", " ");
    joined.lines().map(str::trim).filter(|line| !line.is_empty() && !line.starts_with('#')).map(command).collect()
}

fn command(line: &str) -> Step {
    let (line, comment) = line.split_once("  #").unwrap_or((line, ""));
    let line = line.split_whitespace().collect::<Vec<_>>().join(" ");
    let Some(call) = PROGRAM.iter().find_map(|name| line.strip_prefix(name)) else { return Step::Other(line) };
    assert!(!call.contains(['|', '&', ';', '$', '*', '<', '\'', '"']), "more of a shell than the test knows: {line}");
    let (call, out) = match call.split_once('>') {
        Some((call, file)) => (call, Some(file.trim().to_string())),
        None => (call, None),
    };
    let words = call.split_whitespace().map(String::from).collect();
    let status = comment.split_once("status ").map_or(0, |(_, status)| {
        let digits: String = status.chars().take_while(char::is_ascii_digit).collect();
        digits.parse().expect("a status is a number")
    });
    Step::Run(Call { words, out, status, line })
}

fn edits(block: &[&str]) -> Vec<Step> {
    let of = |sign: char| {
        block.iter().filter_map(|line| line.strip_prefix(sign)).map(String::from).collect::<Vec<_>>().join("\n")
    };
    vec![Step::Edit(of('-'), of('+'))]
}

/// A block whose first line is the name of a file as a comment is that file.
fn file(block: &[&str]) -> Option<Step> {
    let name = block.first()?.strip_prefix("# ")?;
    let is_name = name.ends_with(".yaml") && !name.contains(' ');
    is_name.then(|| Step::Write(name.into(), block.join("\n") + "\n"))
}

fn shown(text: &str) -> Option<Step> {
    let pieces: Vec<String> = plain(text).split('…').map(|piece| piece.trim().to_string()).collect();
    let pieces: Vec<String> = pieces.into_iter().filter(|piece| !piece.is_empty()).collect();
    (!pieces.is_empty()).then_some(Step::Shown(pieces))
}

/// The text with links as their words and blanks in a row as one.
pub fn plain(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, link)) = rest.split_once('[') {
        out.push_str(before);
        match link.split_once("](#").and_then(|(word, target)| Some((word, target.split_once(')')?.1))) {
            Some((word, after)) if !word.contains(['[', '\n']) => {
                out.push_str(word);
                rest = after;
            }
            _ => {
                out.push('[');
                rest = link;
            }
        }
    }
    out.push_str(rest);
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_page_is_read_into_commands_edits_files_and_what_is_shown() {
    let page = "\
Words.

```sh
axiswright new > mine.yaml     # a start
cargo run --release -- check mine.yaml \\
    other.yaml  # status 1: it fails
cargo test
```

> - **x:** a [ball screw](#ball-screw) … and
> more …

```diff
-    travel: 1 m
+    travel: 2 m
```

```yaml
# other.yaml
axes: {}
```
";
    let call = |line: &str, words: &[&str], out: Option<&str>, status| {
        let words = words.iter().map(|word| word.to_string()).collect();
        Step::Run(Call { line: line.into(), words, out: out.map(String::from), status })
    };
    let wanted = vec![
        call("axiswright new > mine.yaml", &["new"], Some("mine.yaml"), 0),
        call("cargo run --release -- check mine.yaml other.yaml", &["check", "mine.yaml", "other.yaml"], None, 1),
        Step::Other("cargo test".into()),
        Step::Shown(vec!["- **x:** a ball screw".into(), "and more".into()]),
        Step::Edit("    travel: 1 m".into(), "    travel: 2 m".into()),
        Step::Write("other.yaml".into(), "# other.yaml\naxes: {}\n".into()),
    ];
    assert_eq!(steps(page), wanted);
}

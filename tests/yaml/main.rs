//! Faults in a user's YAML file: each is told with file, line, column, key path and plain words.
//!
//! The places are counted by hand in the texts below; no outside source is needed.

mod unknown;
mod words;

use axiswright::units::{Dimension, Length, Measure, Money, Ratio};
use axiswright::yaml::{Document, Fault, Faults};
use proptest::prelude::*;

/// Reads a text and hands its root to a reader; the faults in order.
fn faults(text: &str, read: impl FnOnce(&axiswright::yaml::Node<'_>, &mut Faults)) -> Vec<Fault> {
    let mut faults = Faults::default();
    if let Some(document) = Document::parse("test.yaml", text, &mut faults) {
        read(&document.root(), &mut faults);
    }
    faults.into_iter().collect()
}

#[track_caller]
fn told(fault: &Fault, line: usize, column: usize, path: &str, message: &str) {
    assert_eq!(
        (fault.file.as_str(), fault.line, fault.column, fault.path.as_str(), fault.message.as_str()),
        ("test.yaml", line, column, path, message)
    );
}

#[test]
fn a_unit_of_another_dimension_is_told_with_the_right_ones() {
    let found = faults("travel: 3 kg\n", |root, faults| {
        assert_eq!(root.need_quantity::<Length>("travel", faults), None);
    });
    assert_eq!(found.len(), 1);
    told(
        &found[0],
        1,
        9,
        "travel",
        "`kg` is a unit of mass, but a length is needed here, in mm, m, µm, nm, cm, km, in, ft or mil",
    );
}

#[test]
fn a_number_without_unit_is_told_as_written() {
    let found = faults("travel: 11.50\n", |root, faults| {
        root.need_quantity::<Length>("travel", faults);
    });
    told(
        &found[0],
        1,
        9,
        "travel",
        "`11.50` has no unit; a length is needed here, in mm, m, µm, nm, cm, km, in, ft or mil",
    );
}

#[test]
fn plain_numbers_and_money_need_no_unit() {
    let found = faults("friction: 0.005\nprice: 60000\n", |root, faults| {
        assert_eq!(root.need_quantity::<Ratio>("friction", faults).map(Measure::si), Some(0.005));
        assert_eq!(root.need_quantity::<Money>("price", faults), Some(Money(60_000.0)));
    });
    assert_eq!(found, []);
}

#[test]
fn a_missing_key_is_told_at_its_group() {
    let found = faults("axes:\n  long:\n    speed: 1 m/s\n", |root, faults| {
        root.get("axes").unwrap().get("long").unwrap().need("travel", faults);
    });
    assert_eq!(found.len(), 1);
    told(&found[0], 2, 3, "axes.long.travel", "the key `travel` is missing");
}

#[test]
fn a_missing_key_of_a_list_item_is_told_at_the_item() {
    let found = faults("duty:\n  - { share: 15 % }\n  - speed: 1 m/s\n    stroke: 1 m\n", |root, faults| {
        for item in root.get("duty").unwrap().list(faults) {
            item.need("speed", faults);
            item.need("share", faults);
        }
    });
    assert_eq!(found.len(), 2);
    told(&found[0], 2, 5, "duty[0].speed", "the key `speed` is missing");
    told(&found[1], 3, 5, "duty[1].share", "the key `share` is missing");
}

#[test]
fn a_key_without_value_is_absent_and_told_when_needed() {
    let found = faults("travel:\nspeed: 1 m/s\n", |root, faults| {
        assert!(root.get("travel").is_none());
        root.need("travel", faults);
    });
    assert_eq!(found.len(), 1);
    told(&found[0], 1, 1, "travel", "this key has no value");
}

#[test]
fn a_wrong_type_is_told_in_plain_words() {
    let text = "count: many\nhours: [1]\nname: { a: 1 }\nflag: 1\nlist: 3\ngroup: x\nlength: true\ndrives: 1.5\n";
    let found = faults(text, |root, faults| {
        root.need_count("count", faults);
        root.need_number("hours", faults);
        root.need_text("name", faults);
        root.need_flag("flag", faults);
        assert!(root.need("list", faults).unwrap().list(faults).is_empty());
        let group = root.need("group", faults).unwrap();
        group.only_keys(&["a"], faults);
        group.need("a", faults);
        assert!(group.entries(faults).is_empty());
        root.need_quantity::<Length>("length", faults);
        root.need_count("drives", faults);
    });
    assert_eq!(found.len(), 8, "each once: {found:#?}");
    told(&found[0], 1, 8, "count", "a whole number was expected, but this is text");
    told(&found[1], 2, 1, "hours", "a number was expected, but this is a list");
    told(&found[2], 3, 1, "name", "text was expected, but this is a group of keys");
    told(&found[3], 4, 7, "flag", "`true` or `false` was expected, but this is a number");
    told(&found[4], 5, 7, "list", "a list was expected, but this is a number");
    told(&found[5], 6, 8, "group", "a group of keys (`key: value` lines) was expected, but this is text");
    told(&found[6], 7, 9, "length", "a length was expected, but this is `true` or `false`");
    told(&found[7], 8, 9, "drives", "a whole number from 0 was expected, but this is `1.5`");
}

#[test]
fn a_word_that_is_no_choice_is_told_with_the_nearest() {
    let found = faults("feedback: skale\n", |root, faults| {
        assert_eq!(root.need_choice("feedback", &[("any", 0), ("motor", 1), ("scale", 2)], faults), None);
    });
    told(&found[0], 1, 11, "feedback", "`skale` is not a choice here; any, motor or scale was expected");
    assert_eq!(found[0].help.as_deref(), Some("did you mean `scale`?"));
}

#[test]
fn numbers_that_are_not_finite_are_refused() {
    let text = "a: .nan\nb: .inf\nc: -.inf\nd: nan mm\ne: 1e400\nf: '1,5'\n";
    let found = faults(text, |root, faults| {
        for key in ["a", "b", "c", "e", "f"] {
            assert_eq!(root.need_number(key, faults), None, "{key}");
        }
        root.need_quantity::<Ratio>("a", faults);
        root.need_quantity::<Length>("d", faults);
    });
    assert_eq!(found.len(), 6, "{found:#?}");
    told(&found[0], 1, 4, "a", "`.nan` is not a finite number");
    told(&found[1], 2, 4, "b", "`.inf` is not a finite number");
    told(&found[2], 3, 4, "c", "`-.inf` is not a finite number");
    told(&found[3], 4, 4, "d", "`nan mm` is not a finite number");
    told(&found[4], 5, 4, "e", "`1e400` is not a finite number");
    told(&found[5], 6, 4, "f", "`1,5` has a decimal comma; write a decimal point: `1.5`");
}

#[test]
fn a_duplicate_key_is_told_at_its_second_place_beside_other_faults() {
    let text = "axes:\n  long:\n    speed: 1 m/s\n    travel: 3 m\n    speed: 2 m/s\n  long:\n    speed: 3 m/s\nx: 1\n";
    let found = faults(text, |root, faults| {
        let long = root.get("axes").unwrap().get("long").unwrap();
        assert_eq!(long.get_text("speed", faults).as_deref(), Some("1 m/s"), "the first one is read on");
        root.only_keys(&["axes"], faults);
    });
    assert_eq!(found.len(), 3, "{found:#?}");
    told(&found[0], 5, 5, "axes.long.speed", "this key is given twice, first in line 3");
    told(&found[1], 6, 3, "axes.long", "this key is given twice, first in line 2");
    told(&found[2], 8, 1, "x", "unknown key `x`");
}

#[test]
fn a_tab_as_indentation_is_told_in_its_line() {
    let found = faults("axes:\n  long:\n\ttravel: 3 m\n", |_, _| unreachable!("the text is no YAML"));
    assert_eq!(found.len(), 1);
    told(&found[0], 3, 1, "", "a line is indented with a tab");
}

#[test]
fn a_text_that_is_no_yaml_is_told_with_its_place() {
    let found = faults("a: 1\nb: [1, 2\nc: 3\n", |_, _| unreachable!("the text is no YAML"));
    assert_eq!(found.len(), 1);
    assert_eq!((found[0].line, found[0].file.as_str()), (3, "test.yaml"));
    assert!(found[0].message.starts_with("the bracket opened in line 2 is not closed"), "{}", found[0].message);
}

#[test]
fn files_without_content_are_refused() {
    for text in ["", "\n\n", "# only a comment\n", "\u{feff}", "---\n...\n", "~"] {
        let found = faults(text, |_, _| unreachable!("there is nothing to read"));
        assert_eq!(found.len(), 1, "{text:?}");
        told(&found[0], 1, 1, "", "the file is empty");
    }
}

#[test]
fn two_documents_in_a_file_are_refused_at_the_second() {
    let found = faults("---\na: 1\n---\nb: 2\n", |_, _| unreachable!("two documents"));
    told(&found[0], 3, 1, "", "the file holds more than one YAML document");
}

#[test]
fn an_alias_bomb_is_refused() {
    let mut text = String::from("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
    for level in 1..10 {
        let items = vec![format!("*a{}", level - 1); 10].join(", ");
        text.push_str(&format!("a{level}: &a{level} [{items}]\n"));
    }
    let found = faults(&text, |_, _| unreachable!("10^10 values"));
    told(&found[0], 0, 0, "", "aliases repeat too much of the file");
}

#[test]
fn deep_nesting_is_refused_at_once() {
    for text in ["[".repeat(1_000_000), "{a: ".repeat(100_000), "[".repeat(500) + &"]".repeat(500), "- ".repeat(20_000)]
    {
        let found = faults(&text, |_, _| unreachable!("too deep"));
        assert_eq!(found.len(), 1);
        assert!(found[0].message.contains("nested too deep"), "{}", found[0].message);
    }
}

#[test]
fn columns_count_characters_also_behind_other_alphabets() {
    let found = faults("größe: { länge: 3 kg, тест: 1, 長さ: [1, zwölf] }\n", |root, faults| {
        let group = root.get("größe").unwrap();
        group.need_quantity::<Length>("länge", faults);
        let list = group.get("長さ").unwrap().list(faults);
        list[1].number(faults);
    });
    assert_eq!(found.len(), 2);
    assert_eq!((found[0].line, found[0].column, found[0].path.as_str()), (1, 17, "größe.länge"));
    told(&found[1], 1, 40, "größe.長さ[1]", "a number was expected, but this is text");
}

#[test]
fn a_byte_order_mark_and_windows_line_ends_do_not_shift_places() {
    let read = |root: &axiswright::yaml::Node<'_>, faults: &mut Faults| {
        root.only_keys(&["travel"], faults);
        root.need_quantity::<Length>("travel", faults);
    };
    let plain = faults("# Maß\nspeed: 1\ntravel: 3 kg\n", read);
    let windows = faults("\u{feff}# Maß\r\nspeed: 1\r\ntravel: 3 kg\r\n", read);
    assert_eq!(plain.len(), 2);
    assert_eq!((plain[1].line, plain[1].column), (3, 9));
    assert_eq!(plain, windows);
}

#[test]
fn keys_that_are_not_plain_words_stand_in_quotes_in_the_path() {
    let found = faults("\"X axis\": { a.b: 1, 7: x }\n", |root, faults| {
        let axis = root.get("X axis").unwrap();
        axis.get("a.b").unwrap().text(faults);
        axis.get("a.b").unwrap().flag(faults);
        axis.get("7").unwrap().number(faults);
    });
    told(&found[0], 1, 18, "\"X axis\".\"a.b\"", "`true` or `false` was expected, but this is a number");
    told(&found[1], 1, 24, "\"X axis\".7", "a number was expected, but this is text");
}

#[test]
fn a_number_read_as_text_stays_as_it_is_written() {
    let found = faults("a: 1.50\nb: 0x10\nc: '007'\nd: &n 2.0\ne: *n\nf: no\n", |root, faults| {
        let read: Vec<String> = ["a", "b", "c", "f"].iter().filter_map(|key| root.get_text(key, faults)).collect();
        assert_eq!(read, ["1.50", "0x10", "007", "no"]);
        // an anchor is no part of the value
        assert_eq!(root.get_text("d", faults).as_deref(), Some("2.0"));
        // behind an alias the number is printed anew
        assert_eq!(root.get_text("e", faults).as_deref(), Some("2"));
    });
    assert_eq!(found, []);
}

#[test]
fn a_fault_below_an_alias_is_told_at_the_alias() {
    let found = faults("one: &same { travel: 3 kg }\ntwo: *same\n", |root, faults| {
        root.get("two").unwrap().need_quantity::<Length>("travel", faults);
    });
    assert_eq!((found[0].line, found[0].column, found[0].path.as_str()), (2, 6, "two.travel"));
}

#[test]
fn tags_and_keys_in_brackets_are_refused() {
    let found = faults("a: !length 3\n", |root, faults| {
        root.need_text("a", faults);
    });
    assert_eq!(found[0].message, "text was expected, but this is a value with a tag");
    let found = faults("? [a, b]\n: 1\n", |_, _| unreachable!("no key"));
    assert_eq!(found[0].message, "a key must be one word");
}

#[test]
fn all_faults_of_all_files_stand_in_order_and_each_once() {
    let mut all = Faults::default();
    for name in ["b.yaml", "a.yaml"] {
        let document = Document::parse(name, "travel: 3 kg\nspede: 1\nmass: x\n", &mut all).unwrap();
        let root = document.root();
        for _ in 0..2 {
            root.need_number("mass", &mut all);
            root.only_keys(&["travel", "mass", "speed"], &mut all);
            root.need_quantity::<Length>("travel", &mut all);
        }
    }
    all.missing_file("gone.yaml", &std::io::Error::from(std::io::ErrorKind::NotFound));
    let order: Vec<(&str, usize)> = all.iter().map(|fault| (fault.file.as_str(), fault.line)).collect();
    let wanted =
        [("a.yaml", 1), ("a.yaml", 2), ("a.yaml", 3), ("b.yaml", 1), ("b.yaml", 2), ("b.yaml", 3), ("gone.yaml", 0)];
    assert_eq!(order, wanted);
    assert_eq!(all.iter().last().unwrap().message, "the file cannot be read: there is no such file");
}

#[test]
fn a_fault_is_drawn_with_its_line_the_mark_and_the_help() {
    let found = faults("axes:\n  long:\n    maß: 1\n    travle: 3 m\n", |root, faults| {
        let long = root.get("axes").unwrap().get("long").unwrap();
        long.only_keys(&["travel", "maß"], faults);
    });
    let wanted = "\
error: `axes.long.travle`: unknown key `travle`
 --> test.yaml:4:5
  |
4 |     travle: 3 m
  |     ^^^^^^ not a known key
  |
  = help: did you mean `travel`?";
    assert_eq!(found[0].to_string(), wanted);
}

#[test]
fn control_characters_of_a_file_do_not_reach_the_terminal() {
    let found = faults("travel: \"\\e[31m3 m\"\n\"\\u202Ekey\": 1\n", |root, faults| {
        root.only_keys(&["travel"], faults);
        root.need_quantity::<Length>("travel", faults);
    });
    assert_eq!(found.len(), 2);
    for fault in &found {
        let drawn = fault.to_string();
        assert!(!drawn.chars().any(|c| (c.is_control() && c != '\n') || c == '\u{202e}'), "{drawn:?}");
    }
}

/// Reads everything everywhere in every way.
fn read_all(node: &axiswright::yaml::Node<'_>, faults: &mut Faults) {
    node.only_keys(&["known"], faults);
    node.need("known", faults);
    node.text(faults);
    node.number(faults);
    node.count(faults);
    node.flag(faults);
    node.choice(&[("one", 1), ("two", 2)], faults);
    node.quantity_as(Dimension::Length, faults);
    if node.is_list() {
        node.list(faults).iter().for_each(|item| read_all(item, faults));
    }
    if node.is_mapping() {
        node.entries(faults).iter().for_each(|(_, value)| read_all(value, faults));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn no_text_brings_the_reader_down(text in r#"([-a-c0-9 :,\[\]{}#&*!|>'"%@`~?\n\r\t.é長\\]|- |: |\n  |key: ){0,60}"#) {
        let found = faults(&text, read_all);
        for fault in found {
            prop_assert!(!fault.to_string().is_empty());
            let lines = text.split('\n').count() + text.matches('\r').count();
            prop_assert!(fault.line <= lines, "line {} of {lines}", fault.line);
        }
    }
}

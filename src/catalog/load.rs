//! From YAML files to the catalogue.
//!
//! Method: files come in layers, the built-in one first, then one a folder. Within a layer every designation is
//! there once; a later layer adds to the earlier ones or takes the place of parts with the same designation. A
//! file with `replaces-kind: true` drops all earlier parts of its kind. All faults of all files are told at once.
//! Limits: folders are read eight levels deep; only names that end in `.yaml` or `.yml` count; a file holds at most 20 000 parts, and
//! where a thousand faults are told the rest of a file is not read.

use super::kinds::KINDS;
use super::part::{Field, Part};
use super::reading::{Reading, Variant};
use super::{Catalog, Lists, PriceBasis, RackGrade};
use crate::yaml::{Document, Fault, Faults, Node, Purpose, nearest, read_text};
use include_dir::{Dir, DirEntry, include_dir};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

static BUILT_IN: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/catalog");
const DEEPEST: usize = 8;
/// The most parts that the entries and variants of one file may make.
const MOST_PARTS: usize = 20_000;
const HEAD: [&str; 7] = ["kind", "basis", "series", "lead-time", "replaces-kind", "variants", "entries"];

/// How parts of one kind are read, emptied, merged and counted.
pub(super) struct Reader {
    read: for<'a> fn(&Node<'a>, &mut Layer<'a, '_>),
    drop_all: fn(&mut Lists),
    merge: fn(&mut Lists, &mut Lists),
    count: fn(&mut Lists) -> usize,
}

impl Reader {
    pub(super) const fn of<P: Part>() -> Reader {
        Reader { read: read::<P>, drop_all: drop_all::<P>, merge: merge::<P>, count: count::<P> }
    }
}

/// Who has a designation.
#[derive(Clone)]
struct Owner<'a> {
    kind: &'static str,
    layer: usize,
    /// Where it stands.
    place: Node<'a>,
}

impl Owner<'_> {
    /// The file and line in which it stands.
    fn told(&self) -> String {
        self.place.told()
    }
}

/// What one layer is read into.
struct Layer<'a, 's> {
    number: usize,
    lists: Lists,
    owners: &'s mut BTreeMap<String, Owner<'a>>,
    /// Places that name a steel, to be checked when all steels are known.
    steels: &'s mut Vec<Node<'a>>,
    faults: &'s mut Faults,
}

impl<'a> Layer<'a, '_> {
    /// Whether the designation is free; if so it is taken from now on.
    fn take(&mut self, designation: &str, kind: &'static str, entry: &Node<'a>) -> bool {
        let place = entry.get("designation").unwrap_or_else(|| entry.clone());
        if let Some(owner) = self.owners.get(designation) {
            if owner.layer == self.number {
                let message = format!("the designation `{designation}` is given twice, first in {}", owner.told());
                place.fault(self.faults, message, Some("every part needs a designation of its own".into()));
                return false;
            }
            if owner.kind != kind {
                let message = format!("`{designation}` is already the designation of another kind, `{}`", owner.kind);
                let help = format!("it stands in {}; only a part of the same kind takes its place", owner.told());
                place.fault(self.faults, message, Some(help));
                return false;
            }
        }
        let owner = Owner { kind, layer: self.number, place };
        self.owners.insert(designation.into(), owner);
        true
    }
}

fn read<'a, P: Part>(root: &Node<'a>, layer: &mut Layer<'a, '_>) {
    let basis = root.need_as("basis", "with where the data come from", layer.faults);
    let generic =
        basis.and_then(|basis| basis.text(layer.faults)).is_some_and(|basis| basis.trim().starts_with("generic"));
    root.get_text("series", layer.faults);
    let lead_time = root.get("lead-time");
    let variants: Vec<Option<Variant<'a>>> = match root.get("variants") {
        None => vec![None],
        Some(list) => {
            let nodes = list.list(layer.faults);
            nodes.iter().filter_map(|node| Variant::read(node, P::FIELDS, layer.faults)).map(Some).collect()
        }
    };
    let keys: Vec<String> = P::FIELDS.iter().map(Field::key).collect();
    let mut known = vec!["designation", "lead-time"];
    known.extend(keys.iter().map(String::as_str));
    let entries = root
        .need_as("entries", "with one item a part", layer.faults)
        .map(|list| list.list(layer.faults))
        .unwrap_or_default();
    let parts = entries.len().saturating_mul(variants.len());
    if parts > MOST_PARTS {
        let message = format!("{} entries in {} variants are {parts} parts", entries.len(), variants.len());
        root.fault(layer.faults, message, Some(format!("a file holds at most {MOST_PARTS} parts; make several of it")));
        return;
    }
    for entry in entries {
        // what is said of a file that is wrong throughout is enough
        if layer.faults.is_full() {
            return;
        }
        entry.only_keys(&known, layer.faults);
        for variant in &variants {
            if layer.faults.is_full() {
                return;
            }
            let (variant, lead_time) = (variant.clone(), lead_time.clone());
            let reading = Reading { entry: entry.clone(), variant, lead_time, fields: P::FIELDS };
            if P::KIND == RackGrade::KIND {
                layer.steels.extend(["steel", "pinion-steel"].iter().filter_map(|key| reading.get(key)));
            }
            let Some(part) = P::read(&reading, generic, layer.faults) else { continue };
            if layer.take(part.designation(), P::KIND, &entry) {
                P::rows_mut(&mut layer.lists).push(part);
            }
        }
    }
}

fn drop_all<P: Part>(lists: &mut Lists) {
    P::rows_mut(lists).clear();
}

/// Adds a layer's parts, which take the place of parts with the same designation.
fn merge<P: Part>(all: &mut Lists, layer: &mut Lists) {
    let mut parts: BTreeMap<String, P> = BTreeMap::new();
    for part in P::rows_mut(all).drain(..).chain(P::rows_mut(layer).drain(..)) {
        parts.insert(part.designation().into(), part);
    }
    *P::rows_mut(all) = parts.into_values().collect();
}

fn count<P: Part>(lists: &mut Lists) -> usize {
    P::rows_mut(lists).len()
}

/// The files built into the program, as name and text.
pub fn built_in() -> Vec<(String, String)> {
    fn collect(dir: &Dir<'_>, files: &mut Vec<(String, String)>) {
        for entry in dir.entries() {
            match entry {
                DirEntry::Dir(dir) => collect(dir, files),
                DirEntry::File(file) if is_yaml(file.path()) => {
                    let name = file.path().to_string_lossy().replace('\\', "/");
                    files.push((format!("catalog/{name}"), file.contents_utf8().unwrap_or_default().into()));
                }
                DirEntry::File(_) => {}
            }
        }
    }
    let mut files = Vec::new();
    collect(&BUILT_IN, &mut files);
    files
}

/// The built-in catalogue with the files of these folders added to it, later ones last.
pub fn load(extra: &[PathBuf]) -> Result<Catalog, Faults> {
    load_with(extra, &[])
}

/// The same with one more layer: groups of another file that hold what a file of the catalogue holds.
pub fn load_with(extra: &[PathBuf], own: &[Node<'_>]) -> Result<Catalog, Faults> {
    let mut faults = Faults::default();
    let layers = extra.iter().map(|path| read_folder(path, &mut faults)).collect();
    match over_built_in(layers, own) {
        Ok(catalog) if faults.is_empty() => Ok(catalog),
        Ok(_) => Err(faults),
        Err(more) => {
            faults.merge(more);
            Err(faults)
        }
    }
}

/// The catalogue of these files, given as name and text, and no others.
pub fn load_texts(texts: Vec<(String, String)>) -> Result<Catalog, Faults> {
    load_layers(vec![texts])
}

/// The catalogue of these layers of files, given as name and text; a later layer wins over an earlier one.
pub fn load_layers(layers: Vec<Vec<(String, String)>>) -> Result<Catalog, Faults> {
    join(Joined::default(), Vec::new(), layers, &[])
}

/// The built-in catalogue with these layers and groups laid over it.
pub(super) fn over_built_in(layers: Vec<Vec<(String, String)>>, own: &[Node<'_>]) -> Result<Catalog, Faults> {
    join(JOINED.clone(), vec![FILES.clone()], layers, own)
}

/// The built-in files in order, as values, and what they come to: they are read once, since choices and tables of suppliers are laid
/// over them again and again.
static FILES: LazyLock<Vec<(String, String)>> = LazyLock::new(|| {
    let mut files = built_in();
    files.sort();
    files
});
static DOCUMENTS: LazyLock<Read> = LazyLock::new(|| parsed(&FILES));
static JOINED: LazyLock<Joined<'static>> = LazyLock::new(|| {
    let mut joined = Joined { faults: DOCUMENTS.1.clone(), ..Joined::default() };
    joined.add(DOCUMENTS.0.iter().map(Document::root).collect());
    joined
});

/// The files of a layer as values, and what is wrong with them.
type Read = (Vec<Document>, Faults);

fn parsed(layer: &[(String, String)]) -> Read {
    let mut faults = Faults::default();
    (layer.iter().filter_map(|(name, text)| Document::parse(name, text, &mut faults)).collect(), faults)
}

/// What the layers so far come to.
#[derive(Clone, Default)]
struct Joined<'a> {
    /// How many they are.
    layers: usize,
    all: Lists,
    owners: BTreeMap<String, Owner<'a>>,
    steels: Vec<Node<'a>>,
    faults: Faults,
}

impl<'a> Joined<'a> {
    /// Lays one more layer over them.
    fn add(&mut self, roots: Vec<Node<'a>>) {
        let Joined { layers, all, owners, steels, faults } = self;
        let files: Vec<(Node<'_>, &Reader)> =
            roots.into_iter().filter_map(|root| file_of_kind(root, all, owners, faults)).collect();
        let mut layer = Layer { number: *layers, lists: Lists::default(), owners, steels, faults };
        for (root, reader) in files {
            (reader.read)(&root, &mut layer);
        }
        let mut lists = layer.lists;
        if lists.prices.len() > 1 {
            let message = format!("there is more than one `{}` among these files", PriceBasis::KIND);
            let owner = |basis: Option<&PriceBasis>| basis.and_then(|basis| owners.get(&basis.designation));
            let help = owner(lists.prices.first()).map(|first| format!("keep one; the first is in {}", first.told()));
            if let Some(second) = owner(lists.prices.get(1)) {
                second.place.fault(faults, message, help);
            }
        }
        if !lists.prices.is_empty() {
            all.prices.clear();
        }
        for kind in &KINDS {
            (kind.reader.merge)(all, &mut lists);
        }
        *layers += 1;
    }
}

/// Lays layers over what the earlier ones, whose files come first, come to; then groups of another file.
fn join(
    joined: Joined<'static>,
    mut earlier: Vec<Vec<(String, String)>>,
    mut layers: Vec<Vec<(String, String)>>,
    own: &[Node<'_>],
) -> Result<Catalog, Faults> {
    layers.iter_mut().for_each(|layer| layer.sort());
    let read: Vec<Read> = layers.iter().map(|layer| parsed(layer)).collect();
    let mut joined: Joined<'_> = joined;
    read.iter().for_each(|(_, found)| joined.faults.merge(found.clone()));
    for (documents, _) in &read {
        joined.add(documents.iter().map(Document::root).collect());
    }
    if !own.is_empty() {
        joined.add(own.to_vec());
    }
    let Joined { mut all, steels, mut faults, .. } = joined;
    for node in steels {
        let Some(name) = node.text(&mut faults) else { continue };
        if !all.steels.iter().any(|steel| steel.designation == name) {
            let near = nearest(&name, all.steels.iter().map(|steel| steel.designation.as_str()));
            let help = near.map_or_else(
                || {
                    "`axiswright catalog list steel` names those there are; others go into a file with `kind: steel`"
                        .into()
                },
                |near| format!("did you mean `{near}`?"),
            );
            node.fault(&mut faults, format!("there is no steel `{name}` in the catalogue"), Some(help));
        }
    }
    if faults.is_empty() {
        for kind in KINDS.iter().filter(|kind| (kind.reader.count)(&mut all) == 0) {
            let message = format!("there is no `{}` in the catalogue", kind.name);
            faults.push(Fault::of_file("catalog", message, Some("a file with this `kind` is needed".into())));
        }
    }
    earlier.extend(layers);
    match all.prices.pop() {
        Some(prices) if faults.is_empty() => Ok(all.into_catalog(prices, earlier)),
        _ => Err(faults),
    }
}

/// The reader of a file's kind, after telling faults of its head and dropping the kind if it says so.
fn file_of_kind<'a>(
    root: Node<'a>,
    all: &mut Lists,
    owners: &mut BTreeMap<String, Owner<'a>>,
    faults: &mut Faults,
) -> Option<(Node<'a>, &'static Reader)> {
    if !root.is_for(Purpose::Parts, faults) {
        return None;
    }
    root.only_keys(&HEAD, faults);
    let options: Vec<(&str, usize)> = KINDS.iter().enumerate().map(|(index, kind)| (kind.name, index)).collect();
    let kind = &KINDS[root.need_choice("kind", &options, faults)?];
    if root.get("replaces-kind").and_then(|node| node.flag(faults)) == Some(true) {
        (kind.reader.drop_all)(all);
        owners.retain(|_, owner| owner.kind != kind.name);
    }
    Some((root, &kind.reader))
}

fn is_yaml(path: &Path) -> bool {
    path.extension().is_some_and(|extension| extension == "yaml" || extension == "yml")
}

/// The YAML files of a folder, or the one file, as name and text.
fn read_folder(path: &Path, faults: &mut Faults) -> Vec<(String, String)> {
    let name = path.file_name().map_or(String::new(), |name| name.to_string_lossy().into_owned());
    let mut files = Vec::new();
    if !path.exists() {
        let help = "a folder of files of the catalogue is wanted, or one of them";
        let message = "there is no such file or folder";
        faults.push(Fault::of_file(&path.display().to_string(), message, Some(help.into())));
        return files;
    }
    if path.is_file() {
        files.extend(read_text(path, &name, faults).map(|text| (name, text)));
        return files;
    }
    collect_files(path, &name, 0, &mut files, faults);
    if files.is_empty() && faults.is_empty() {
        let help = "files of the catalogue end in .yaml";
        faults.push(Fault::of_file(&name, "there is no catalogue file in this folder", Some(help.into())));
    }
    files
}

fn collect_files(dir: &Path, name: &str, depth: usize, files: &mut Vec<(String, String)>, faults: &mut Faults) {
    let mut entries: Vec<PathBuf> =
        match std::fs::read_dir(dir).and_then(|entries| entries.collect::<Result<Vec<_>, _>>()) {
            Ok(entries) => entries.into_iter().map(|entry| entry.path()).collect(),
            Err(error) => {
                faults.missing_file(name, &error);
                return;
            }
        };
    entries.sort();
    for path in entries {
        let last = path.file_name().map_or(String::new(), |last| last.to_string_lossy().into_owned());
        let full = if name.is_empty() { last } else { format!("{name}/{last}") };
        if path.is_dir() {
            if depth < DEEPEST {
                collect_files(&path, &full, depth + 1, files, faults);
            }
        } else if is_yaml(&path) {
            files.extend(read_text(&path, &full, faults).map(|text| (full, text)));
        }
    }
}

"""The catalogue as Python reads it: every part with its values in SI units, and cut-down catalogues for the program."""

import pathlib

import yaml

from quantities import in_si


def files(folder):
    """All catalogue files below a folder, as YAML gives them."""
    return [yaml.safe_load(path.read_text()) for path in sorted(pathlib.Path(folder).rglob("*.yaml"))]


def _parts_of(document):
    common = {"kind": document["kind"]}
    if "lead-time" in document:
        common["lead-time"] = document["lead-time"]
    for entry in document["entries"]:
        for variant in document.get("variants") or [{}]:
            raw = {**common, **entry, **variant.get("set", {})}
            part = {key: in_si(value) for key, value in raw.items() if key not in ("kind", "designation", "words")}
            for key in ("kind", "words", "of"):
                if key in raw:
                    part["the kind" if key == "kind" else key] = raw[key]
            # a part may have a key of its own that is called kind, which stands for the file's
            if "kind" in entry:
                part["kind"] = entry["kind"]
            for key, factor in variant.get("times", {}).items():
                if key in part:
                    part[key] = part[key] * factor
            for key, more in variant.get("plus", {}).items():
                if key in part:
                    part[key] = part[key] + in_si(more)
            part["the kind"] = document["kind"]
            part["designation"] = entry["designation"] + variant.get("suffix", "")
            yield part


def by_kind(documents):
    """The parts of each kind in the order of their designations."""
    kinds = {}
    for document in documents:
        kinds.setdefault(document["kind"], []).extend(_parts_of(document))
    return {kind: sorted(parts, key=lambda part: part["designation"]) for kind, parts in kinds.items()}

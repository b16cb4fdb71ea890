"""Gathers what the reader is trained with and tried on: prepare.py OUT.json [LABELLED_POSTS.yaml ...]

Run from the repository's root. Reads the signs of rules/catalog/signs, the labelled sentences beside this
script without the posts held out (hands.py), the open labelled posts and the open lines about dangers of the
tests. Files named in the arguments are labelled posts for trials only; nothing is trained with them. Never name
posts kept aside.
"""
import glob, json, os, re, sys, yaml

here = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, here)
import changes, lengths
from hands import lines
from text import sentences

signs = [s for f in sorted(glob.glob("rules/catalog/signs/*.yaml")) for s in yaml.safe_load(open(f, encoding="utf-8"))]
known = {s["id"] for s in signs}
describe = [f"{s['name']}. {s['ask']}" for s in signs]
rows, posts = [], []
for line in lines():
    pairs = {t[:-1]: t[-1] for t in line.labels}
    assert set(pairs) <= known and set(pairs.values()) <= set("+-?"), line
    if not line.held:
        rows.append(dict(source=line.hand + ".tsv", post=line.post, context=line.context, sentence=line.sentence, labels=pairs))
for s in signs:
    for phrase in s.get("phrases", []):
        rows.append(dict(source="phrases", post=len(rows), context="", sentence=phrase, labels={s["id"]: "+"}))
told = list(changes.posts())
named = changes.columns(told)
tried = changes.prepared(told, named)
measured = lengths.changes_named(told)
for (_, _, parts), post in zip(told, tried):
    for found, part in zip(lengths.spans(parts, any(one[2] is not None for one in parts)), post["parts"]):
        part["lengths"] = found

def name(one):
    return one["sign"] if isinstance(one, dict) else one

def post(source, one):
    maybe = [name(x) for key in ("maybe", "doubtful", "past") for x in one.get(key) or []]
    return dict(source=source, id=one["id"], text=one["text"], sentences=sentences(one["text"]), fit=one.get("fit", True),
                present=[name(x) for x in one.get("present") or []], denied=[name(x) for x in one.get("denied") or []], maybe=maybe)

for file in sorted(glob.glob("src/test/resources/posts/*.yaml")):
    posts += [post("posts-" + os.path.basename(file), p) for p in yaml.safe_load(open(file, encoding="utf-8"))]
dangers = {s["id"] for s in signs if s.get("redFlag")}
for file in sorted(glob.glob("src/test/resources/dangers/*.yaml")):
    hand = yaml.safe_load(open(file, encoding="utf-8"))
    for kind in ("posts", "harmless"):
        for i, p in enumerate(hand[kind]):
            danger = p.get("danger")
            danger = "difference-between-the-sides-is-new" if danger == "new-difference-between-the-sides" else danger
            # Only the dangers of such a line are labelled: any other sign may be said besides.
            posts.append(dict(source="dangers-" + os.path.basename(file), id=f"{kind}-{i}", text=p["text"], sentences=sentences(p["text"]), fit=True,
                              present=[danger] if danger else [], denied=[],
                              maybe=sorted(known - dangers) + (sorted(dangers) if p.get("circumstance") else [])))
for file in sys.argv[2:]:
    posts += [post("trial-" + os.path.basename(file), p) for p in yaml.safe_load(open(file, encoding="utf-8"))]
json.dump(dict(ids=[s["id"] for s in signs], describe=describe, dangers=sorted(dangers), rows=rows, posts=posts,
               columns=named, changes=tried, measured=measured), open(sys.argv[1], "w"))
count = {}
for one in rows + posts:
    count[one["source"]] = count.get(one["source"], 0) + 1
print(len(signs), "signs", len(dangers), "dangers", len(told), "posts with changes", count)

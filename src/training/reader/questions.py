"""What the reader reads of what the writer asks: the labels, and the head's place in the ONNX file.

The labels are those of the fourth column of both/*.tsv, and of questions/*.tsv for posts that were labelled for it later; the
head is changes.Head, with a column for each label. train.py trains it together with the rest. For each sentence the model's
fourth output names how probably it asks each thing. A label is a kind of question, or `kind:about`; `change:ID` asks whether to
make a change of the rule book.
"""
import collections, random
import numpy as np, torch, yaml

from changes import looked
from graph import Part

LEAST = 5  # questions that a label needs to be learnt
CHANGE = "change:"
NO_QUESTION = "-"
ASKED = ["Should I {}?", "Would it help to {}?", "Do I {}?", "Shall I just {}?", "Is it better to {}?", "My friend says to {}.", "Can I {}?"]
WAYS = 3  # of them for each change
WEIGHT = 2.0  # of what is asked against what is not


def named():
    """What the replies call each change; asked about so, a change is learnt that hardly anybody asks about."""
    said = yaml.safe_load(open("rules/voice/en/changes.yaml", encoding="utf-8"))
    return {name: words["bare"] for name, words in said.items() if "{" not in words["bare"]}


def columns(all_posts):
    counts = collections.Counter(label for _, _, post in all_posts for *_, asked in post for label in asked or [])
    kinds = {label for label, n in counts.items() if n >= LEAST and label != NO_QUESTION and not label.startswith(CHANGE)}
    print("questions left out:", {label: n for label, n in counts.items() if label not in kinds and not label.startswith(CHANGE)})
    return sorted(kinds) + sorted(CHANGE + name for name in named())


def asked(post, names):
    """For each sentence of a post the places of what it asks; None where that is not known."""
    place = {name: i for i, name in enumerate(names)}
    return [None if labels is None else [place[one] for one in labels if one in place] for *_, labels in post]


def phrases(names):
    """Posts of one sentence that ask about a change by its name: (sentence, place of the label)."""
    some = random.Random(1)
    return [(way.format(bare), names.index(CHANGE + name)) for name, bare in sorted(named().items()) for way in some.sample(ASKED, WAYS)]


def report(tag, said, truth, names):
    """said: [N, names] of sentences held out, truth: 1 where it is asked."""
    for threshold in (0.2, 0.3, 0.4, 0.5, 0.6):
        read = said >= threshold
        right = (read & (truth > 0)).sum()
        print(tag, "questions", threshold, "precision", round(right / max(1, read.sum()), 3), "recall", round(right / max(1, truth.sum()), 3), flush=True)
    asks = truth.sum(1) > 0
    print(tag, "of", int(asks.sum()), "questions the likeliest label is right in", round(float(truth[asks, said[asks].argmax(1)].mean()), 3), flush=True)


def write(file, head, names):
    """Adds the head to the graph of the model in the file, after that of changes, as float32."""
    part = Part(file, "questions")
    part.write("Sigmoid", [looked(part, head, "changes/pieces")], ["sentences", len(names)])

"""The labelled sentences of sentences/ and both/, and which posts of them are held out: hands.py OUT.yaml writes those.

Every tenth post of the hands from the twentieth on is held out: neither the model nor the plain reader that the
joining is fitted with has seen it, and no trial was chosen by it.
"""
import glob
import os
import sys
from typing import NamedTuple

import yaml

FIRST_HELD = "twentieth"
ONE_IN = 10


class Line(NamedTuple):
    hand: str
    post: int  # counts the posts of a hand from 0; a post begins where there is no context
    context: str
    sentence: str
    labels: list
    held: bool


def order(path):
    """The hands in the order in which the README lists them."""
    name = os.path.basename(path)[:-4]
    readme = open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "README.md"), encoding="utf-8").read()
    return readme.index(f"/{name}.tsv`")


def parts(path):
    """(context, sentence, labels) of each line; in both/, where a blank line ends a post, the context is the two sentences before."""
    if os.path.basename(os.path.dirname(path)) != "both":
        for line in open(path, encoding="utf-8"):
            yield (line.rstrip("\n").split("\t") + ["", ""])[:3]
        return
    before = []
    for line in open(path, encoding="utf-8"):
        sentence, labels = (line.strip().split("\t") + [""])[:2]
        if not sentence:
            before = []
            continue
        yield " ".join(before[-2:]), sentence, " ".join(t for t in labels.split() if t[-1] in "+-?")
        before.append(sentence)


def lines():
    here = os.path.dirname(os.path.abspath(__file__))
    paths = sorted((p for kind in ("sentences", "both") for p in glob.glob(os.path.join(here, kind, "*.tsv"))), key=order)
    since = [os.path.basename(p)[:-4] for p in paths].index(FIRST_HELD)
    for at, path in enumerate(paths):
        post = -1
        for context, sentence, labels in parts(path):
            post += not context
            held = at >= since and post % ONE_IN == ONE_IN - 1
            yield Line(os.path.basename(path)[:-4], post, context, sentence, labels.split(), held)


def held_posts():
    """As the tests' labelled posts are: a sign reported in any sentence is present, else denied, else in doubt."""
    posts = {}
    for line in lines():
        if line.held:
            posts.setdefault(f"{line.hand}-{line.post}", []).append(line)
    for name, parts in posts.items():
        said = {mark: {t[:-1] for p in parts for t in p.labels if t[-1] == mark} for mark in "+-?"}
        text = " ".join(p.sentence if p.sentence[-1] in ".!?" else p.sentence + "." for p in parts)
        yield dict(id=name, text=text, present=sorted(said["+"]), denied=sorted(said["-"] - said["+"]),
                   maybe=sorted(said["?"] - said["+"] - said["-"]))


if __name__ == "__main__":
    with open(sys.argv[1], "w", encoding="utf-8") as out:
        yaml.safe_dump(list(held_posts()), out, sort_keys=False, allow_unicode=True, width=1000)

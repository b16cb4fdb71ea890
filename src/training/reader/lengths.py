"""What the reader reads of the lengths in a post: of which change each gives the amount, and how it counts.

The posts are those of both/*.tsv whose lines have a third column (lengths that are labelled); in the others, a length beside the only
change that its sentence tells of is taken for its amount. train.py trains the head together with the rest. The model's third output
names for each number asked about how probably it gives the amount of nothing, or of each change, and how it counts.
"""
import collections, re
import numpy as np, torch

from graph import Part

NOTHING = "nothing"
# The number is all of the amount, half or a quarter or twice of it; one of two whose difference it is, or twice it; or it takes more than that.
COUNTS = ["whole", "half", "quarter", "twice", "pair", "twice pair", "other"]
FACTOR = {1.0: "whole", 2.0: "half", 4.0: "quarter", 0.5: "twice"}
UNKNOWN = -1
LEAST = 5  # lengths that a change needs to be learnt
LONGEST_MM = 150  # taken for an amount without a label of its own
INNER = 256

UNIT = r"(?:cms?|mms?|centimet(?:er|re)s?|millimet(?:er|re)s?|inch(?:es)?|ins?(?=[\s.,;:!?)]|$)|\"|″|”|'')"
NUMBER = re.compile(
    r"(?<![\w.,/])(?:(?:\d+(?:[.,]\d+)?(?:[ -]\d/\d|\s?[½¼¾⅛⅜⅝⅞])?|\d/\d|[½¼¾⅛⅜⅝⅞])(?:\s?-?" + UNIT + r")?(?![\w/%])"
    r"|(?:half an?|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty)(?: and a half| and a quarter)? " + UNIT + r"\b)", re.I)
WORDS = dict(a=1, an=1, half=0.5, one=1, two=2, three=3, four=4, five=5, six=6, seven=7, eight=8, nine=9, ten=10, twelve=12, fifteen=15, twenty=20)
PARTS = {"½": 0.5, "¼": 0.25, "¾": 0.75, "⅛": 0.125, "⅜": 0.375, "⅝": 0.625, "⅞": 0.875}


def millimetres(text):
    """What a number with its unit comes to; without a unit, in each unit it may have."""
    text = text.lower().strip()
    unit = 10 if re.search(r"cm|centi", text) else 1 if re.search(r"mm|milli", text) else 25.4 if re.search(r"inch|in\b|\"|″|”|''", text) else None
    value = sum(PARTS[c] for c in text if c in PARTS)
    fraction = re.search(r"(\d)/(\d)", text)
    if fraction:
        value += int(fraction[1]) / int(fraction[2])
        text = text[: fraction.start()]
    number = re.search(r"\d+(?:[.,]\d+)?", text)
    if number:
        value += float(number[0].replace(",", "."))
    elif not value:
        words = re.findall(r"[a-z]+", text)
        value = next((WORDS[w] for w in words if w in WORDS), 0) + (0.5 if "and a half" in text else 0.25 if "and a quarter" in text else 0)
    return [value * u for u in ([unit] if unit else [10, 1, 25.4])]


def counted(text, mm):
    """How a number counts towards an amount of so many millimetres."""
    return next((name for own in millimetres(text) for factor, name in FACTOR.items() if own and alike(mm / own, factor)), "other")


def counted_together(texts, mm):
    """The same of two numbers to be compared, of which one may have no unit."""
    if len(texts) != 2:
        return "other"
    apart = [abs(one - two) for one in millimetres(texts[0]) for two in millimetres(texts[1])]
    return next((name for factor, name in ((1, "pair"), (2, "twice pair")) if any(alike(one / mm, factor) for one in apart)), "other")


def alike(ratio, factor):
    return abs(ratio - factor) < 0.13 * factor


def spans(post, of_lengths):
    """For each sentence of a post (from, to, change or NOTHING, how it counts or None) of its numbers; nothing where they are not labelled."""
    out, pairs = [], {}
    for _, _, lengths, *_ in post:
        for text, change, mm, pair in lengths or []:
            if pair:
                pairs.setdefault((change, mm), []).append(text)
    for sentence, labels, lengths, _ in post:
        numbers, found = [(m.start(), m.end()) for m in NUMBER.finditer(sentence)], []
        if of_lengths:
            for text, change, mm, pair in lengths:
                at = sentence.find(text)
                found.append((at, at + len(text), change, counted_together(pairs[change, mm], mm) if pair else counted(text, mm)))
            found += [(a, b, NOTHING, None) for a, b in numbers if all(b <= f or t <= a for f, t, _, _ in found)]
        else:
            done = [label[4:] for label in labels if label.startswith("did:")]
            real = [(a, b) for a, b in numbers if re.search(UNIT, sentence[a:b], re.I) and millimetres(sentence[a:b])[0] <= LONGEST_MM]
            if len(done) == 1 and len(real) == 1:
                found = [(*real[0], done[0], None)]
        out.append(found)
    return out


def changes_named(all_posts):
    """The changes whose amounts are learnt."""
    labelled = collections.Counter(change for _, _, post in all_posts for _, _, lengths, _ in post for _, change, _, _ in lengths or [])
    print("lengths left out:", {c: n for c, n in labelled.items() if n < LEAST})
    return sorted(c for c, n in labelled.items() if n >= LEAST)


class Head(torch.nn.Module):
    """Reads a number by the mean of its pieces, which know their sentence and those around it."""

    def __init__(self, width, count):
        super().__init__()
        self.inner = torch.nn.Linear(width, INNER)
        self.out = torch.nn.Linear(INNER, count)
        self.drop = torch.nn.Dropout(0.2)

    def forward(self, states, spans, row):
        """states [B,T,width], spans [L,T] of 0 and 1, the row of each [L]: logits [L,count]."""
        mean = torch.einsum("lt,ltw->lw", spans / spans.sum(1, keepdim=True).clamp(min=1), states[row].float())
        return self.out(self.drop(torch.relu(self.inner(self.drop(mean)))))


def report(tag, said, truth, names):
    """said: [L, names] of numbers held out, truth: (place of the change, place of the count or UNKNOWN) of each."""
    split = len(names) - len(COUNTS)
    best, sure = said[:, 1:split].argmax(1) + 1, 1 - said[:, 0]
    target, count = truth[:, 0], truth[:, 1]
    for threshold in (0.3, 0.5, 0.7):
        read = sure >= threshold
        right = (read & (target > 0) & (best == target)).sum()
        print(tag, "amounts", threshold, "precision", round(right / max(1, read.sum()), 3), "recall", round(right / max(1, (target > 0).sum()), 3), flush=True)
    known = count != UNKNOWN
    print(tag, "of", (target > 0).sum(), "amounts the change is right in", round((best == target)[target > 0].mean(), 3),
          "how they count in", round((said[:, split:].argmax(1) == count)[known].mean(), 3), flush=True)


def write(file, head, names):
    """Adds the head to the graph of the model in the file, after that of changes, as float32."""
    part = Part(file, "lengths")
    node, number = part.node, part.number
    w = {k: v.detach().numpy().astype(np.float32) for k, v in head.named_parameters()}
    total = node("ReduceSum", ["spans", number("axis1", np.array([1], np.int64))], "total", keepdims=1)
    mean = node("Div", [node("MatMul", ["spans", "changes/pieces"], "sum"), node("Max", [total, number("one", np.float32(1))], "count")], "mean")
    inner = node("Relu", [node("Add", [node("MatMul", [mean, number("inner_weight", w["inner.weight"].T.copy())], "inner_sum"),
                                       number("inner_bias", w["inner.bias"])], "inner")], "active")
    logits = node("Add", [node("MatMul", [inner, number("out_weight", w["out.weight"].T.copy())], "out_sum"), number("out_bias", w["out.bias"])], "logits")
    first, last, ends = number("first", np.array([0], np.int64)), number("last", np.array([-len(COUNTS)], np.int64)), number("ends", np.array([9999], np.int64))
    of_what = node("Softmax", [node("Slice", [logits, first, last, "lengths/axis1"], "of_what")], "what", axis=1)
    how = node("Softmax", [node("Slice", [logits, last, ends, "lengths/axis1"], "of_how")], "how", axis=1)
    part.write("Concat", [of_what, how], ["numbers", len(names)], [("spans", ["numbers", "pieces"])], axis=1)

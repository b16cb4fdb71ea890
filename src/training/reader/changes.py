"""What the reader reads of changes that were tried and made: the labelled posts, the head, and its place in the ONNX file.

The posts are those of changes/*.tsv and both/*.tsv. train.py trains the head together with the signs. For each sentence the
model's second output names how probably each change was done, that any was, that one was taken back, and what one did.
"""
import collections, glob, os
import numpy as np, torch, yaml

from graph import Part

LAYERS = (8, 11)  # of the encoder, that changes are read by
OUTCOMES = ["right", "better", "same", "worse"]
UNDONE = "undone"
DONE = "done"  # that any change was done
LEAST = 8  # sentences that a change needs to be learnt
ONE_IN = 10
ALIKE = [["set-the-straps-shorter", "shorten-the-straps"], ["set-the-straps-longer", "lengthen-the-straps"],
         ["let-out-the-edge-elastic", "ease-the-neckline", "recut-the-armhole-edge"], ["take-room-from-above", "wedge-out-of-the-neckline"],
         ["take-in-the-band", "shorten-the-band-elastic"], ["stay-the-neckline-with-elastic", "recut-the-edge-elastic"],
         ["add-a-support-layer", "double-the-support-layer"]]  # hardly told apart in a post
OTHERS = 2 + len(OUTCOMES)  # columns that are no change
OF_A_PHRASE = -1
ASKING = "?"

here = os.path.dirname(os.path.abspath(__file__))


def posts():
    """(held, signs, [(sentence, labels, lengths, questions)]) of each post.

    signs: in both/, labels of signs, which end in a mark, stand beside those of changes; lengths: (text, change, mm, pair) of each
    number that gives an amount, None in files where these are not labelled; questions: what the sentence asks, None where that
    is not labelled.
    """
    asked = questions()
    for path in sorted(glob.glob(os.path.join(here, "changes", "*.tsv")) + glob.glob(os.path.join(here, "both", "*.tsv"))):
        post, at, text = [], 0, open(path, encoding="utf-8").read()
        measured, asks = " > " in text, any(line.count("\t") == 3 for line in text.split("\n"))
        for line in text.split("\n") + [""]:
            if line.strip():
                sentence, labels, lengths, questioned = (line.split("\t") + ["", "", ""])[:4]
                sentence = sentence.strip()
                known = questioned if asks else asked.get(sentence, None if ASKING in sentence else "")
                post.append((sentence, labels.split(), list(amounts(lengths)) if measured else None, None if known is None else known.split()))
            elif post:
                yield at % ONE_IN == ONE_IN - 1, "both" in path.split(os.sep), post
                post, at = [], at + 1


def questions():
    """What the questions of questions/*.tsv ask: `QUESTION TAB LABELS`, each a sentence of both/*.tsv."""
    found = {}
    for path in sorted(glob.glob(os.path.join(here, "questions", "*.tsv"))):
        found.update(line.split("\t") for line in open(path, encoding="utf-8").read().split("\n") if line)
    return found


def amounts(column):
    """The third column: `TEXT > CHANGE MM`, or `TEXT > CHANGE MM pair` where the amount is the difference of two lengths."""
    for one in filter(None, (part.strip() for part in column.split("; "))):
        text, _, rest = one.rpartition(" > ")
        change, mm, *pair = rest.split()
        yield text, change, float(mm), pair == ["pair"]


def phrases():
    """What the rule book calls a change; such words tell which one is meant, not that it was done."""
    for path in sorted(glob.glob("rules/everyday/*.yaml")):
        book = yaml.safe_load(open(path, encoding="utf-8"))
        for kind in ("changes", "trials"):
            for name, ways in (book.get(kind) or {}).items():
                yield from ((name, way) for way in ways)


def targets(labels):
    for one in labels:
        if one[-1] in "+-?":
            continue  # of a sign
        kind, _, name = one.partition(":")
        yield {"did": name, "undid": UNDONE}.get(kind, kind)
        if kind == "did":
            yield DONE


def columns(all_posts):
    counts = collections.Counter(t for _, _, post in all_posts for _, labels, *_ in post for t in targets(labels))
    changes = sorted(t for t, n in counts.items() if n >= LEAST and t not in OUTCOMES + [UNDONE, DONE])
    print("left out:", {t: n for t, n in counts.items() if n < LEAST})
    return changes + [DONE, UNDONE] + OUTCOMES


def prepared(all_posts, names):
    """The posts as train.py takes them, and after them what the rule book calls each change."""
    place = {name: i for i, name in enumerate(names)}
    of = lambda labels: sorted({place[t] for t in targets(labels) if t in place})
    signs = lambda labels: {t[:-1]: t[-1] for t in labels if t[-1] in "+-?"}
    out = [dict(held=held, parts=[dict(sentence=sentence, told=of(labels), signs=signs(labels) if both else None) for sentence, labels, *_ in post])
           for held, both, post in all_posts]
    return out + [dict(held=False, parts=[dict(sentence="I " + way, told=[place[name], OF_A_PHRASE], signs=None)])
                  for name, way in phrases() if name in place]


class Head(torch.nn.Module):
    """Each column looks for its own pieces; the mean of the sentence and of the sentence before tell the rest."""

    def __init__(self, width, count):
        super().__init__()
        self.scale = width ** -0.5
        self.query = torch.nn.Parameter(torch.randn(width, count) * 0.02)
        self.value = torch.nn.Parameter(torch.randn(width, count) * 0.02)
        self.mean = torch.nn.Parameter(torch.zeros(width, count))
        self.before = torch.nn.Parameter(torch.zeros(width, count))
        self.bias = torch.nn.Parameter(torch.full((count,), -3.0))
        self.drop = torch.nn.Dropout(0.2)

    def forward(self, states, segments, row, before):
        """states [B,T,width], segments [N,T] of 0 and 1, the row and the sentence before (-1: none) of each [N]: logits [N,count]."""
        states = self.drop(states)
        look = ((states @ self.query * 4)[row].float() + (segments.unsqueeze(-1) - 1) * 1e4).softmax(1)
        own = (look * (states @ self.value)[row]).sum(1)
        mean = torch.einsum("nt,ntw->nw", segments / segments.sum(1, keepdim=True).clamp(min=1), states[row].float())
        earlier = torch.where((before >= 0).unsqueeze(-1), mean[before.clamp(min=0)], 0.0)
        return own + (mean @ self.mean + earlier @ self.before) * self.scale * 4 + self.bias


def report(tag, said, truth, names):
    split = len(names) - OTHERS
    for what, part in (("changes", slice(0, split)), ("done", slice(split, split + 1)), ("undone", slice(split + 1, split + 2)), ("outcomes", slice(split + 2, None))):
        for threshold in (0.4, 0.5, 0.6):
            read = said[:, part] >= threshold
            right = (read & (truth[:, part] > 0)).sum()
            print(tag, what, threshold, "precision", round(right / max(1, read.sum()), 3), "recall", round(right / max(1, truth[:, part].sum()), 3), flush=True)


def looked(part, head, pieces):
    """The nodes of the head: its logits of each sentence."""
    node, number = part.node, part.number
    w = {k: v.detach().numpy().astype(np.float32) for k, v in head.named_parameters()}
    axis0, axis1 = number("axis0", np.array([0], np.int64)), number("axis1", np.array([1], np.int64))
    look = node("MatMul", [pieces, number("query", w["query"] * 4)], "look")  # [p,k]
    value = node("MatMul", [pieces, number("value", w["value"])], "values")
    seen = node("Unsqueeze", ["segments", number("axis2", np.array([2], np.int64))], "seen")  # [s,p,1]
    one = number("one", np.float32(1))
    hidden = node("Mul", [node("Sub", [seen, one], "less"), number("far", np.float32(1e4))], "hidden")
    weight = node("Softmax", [node("Add", [look, hidden], "masked")], "weight", axis=1)  # [s,p,k]
    own = node("ReduceSum", [node("Mul", [weight, value], "weighed"), axis1], "own", keepdims=0)
    total = node("ReduceSum", ["segments", axis1], "total", keepdims=1)
    mean = node("Div", [node("MatMul", ["segments", pieces], "sum"), node("Max", [total, one], "count")], "mean")  # [s,width]
    none = number("none", np.zeros((1, w["mean"].shape[0]), np.float32))
    earlier = node("Slice", [node("Concat", [none, mean], "shifted", axis=0), axis0, number("minus1", np.array([-1], np.int64)), axis0], "earlier")
    rest = node("Add", [node("MatMul", [mean, number("mean_weight", w["mean"] * head.scale * 4)], "by_mean"),
                        node("MatMul", [earlier, number("before_weight", w["before"] * head.scale * 4)], "by_before")], "rest")
    return node("Add", [node("Add", [own, rest], "both_ways"), number("bias", w["bias"])], "logits")


def write(file, head, names):
    """Adds the head to the graph of the model in the file, as float32; the other heads read the pieces that it gathers."""
    part = Part(file, "changes")
    node, number = part.node, part.number
    both = node("Concat", [f"/encoder/layers.{i}/norm2/LayerNormalization_output_0" for i in LAYERS], "both", axis=-1)  # [1,p,width]
    logits = looked(part, head, node("Squeeze", [both, number("first_axis", np.array([0], np.int64))], "pieces"))  # [p,width]
    first, axis1 = "changes/axis0", "changes/axis1"
    last, ends = number("last", np.array([-OTHERS], np.int64)), number("ends", np.array([9999], np.int64))
    which = node("Softmax", [node("Slice", [logits, first, last, axis1], "of_which")], "which", axis=1)
    rest = node("Sigmoid", [node("Slice", [logits, last, ends, axis1], "others")], "others_said")
    done = node("Slice", [rest, first, number("first", np.array([1], np.int64)), axis1], "done")
    part.write("Concat", [node("Mul", [which, done], "made"), rest], ["sentences", len(names)], axis=1)

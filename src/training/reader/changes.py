"""Trains what the reader reads of changes that were tried and made, on top of the shipped model, whose signs stay as they are.

    python src/training/reader/changes.py READER_FOLDER OUT_FOLDER [held-out]

READER_FOLDER holds reader.onnx, reader.json and vocabulary.txt. The sentences are those of changes/*.tsv. Writes OUT_FOLDER/reader.onnx,
with one more output, and reader.json, which names its columns: every change, "undone", and what a change did. "held-out" keeps
every tenth post of each hand out of the training, to choose thresholds on, and prints how well those are read. On two cores with torch,
onnx and onnxruntime, some ten minutes.
"""
import collections, glob, json, os, shutil, sys
import numpy as np, onnx, onnxruntime as ort, torch, yaml
from onnx import TensorProto, helper, numpy_helper
from text import Pieces

LAYERS = ["/encoder/layers.8/norm2/LayerNormalization_output_0", "/encoder/layers.11/norm2/LayerNormalization_output_0"]
OUTCOMES = ["right", "better", "same", "worse"]
UNDONE = "undone"
DONE = "done"  # that any change was done
LEAST = 8  # sentences that a change needs to be learnt
ONE_IN = 10
PLACES = 400
ALIKE = [["set-the-straps-shorter", "shorten-the-straps"], ["set-the-straps-longer", "lengthen-the-straps"],
         ["let-out-the-edge-elastic", "ease-the-neckline", "recut-the-armhole-edge"], ["take-room-from-above", "wedge-out-of-the-neckline"],
         ["take-in-the-band", "shorten-the-band-elastic"], ["stay-the-neckline-with-elastic", "recut-the-edge-elastic"],
         ["add-a-support-layer", "double-the-support-layer"]]  # hardly told apart in a post
EPOCHS = 18
BATCH = 64
RATE = 2e-3
DECAY = 3e-2
DROPPED = 0.3
SEED = 41
OTHERS = 2 + len(OUTCOMES)  # columns that are no change

folder = os.path.join(os.path.dirname(os.path.abspath(__file__)), "changes")


def posts():
    """(held, [(sentence, labels)]) of each post; held is None for phrases."""
    for path in sorted(glob.glob(os.path.join(folder, "*.tsv"))):
        post, at = [], 0
        for line in open(path, encoding="utf-8").read().split("\n") + [""]:
            if line.strip():
                sentence, _, labels = line.partition("\t")
                post.append((sentence.strip(), labels.split()))
            elif post:
                yield at % ONE_IN == ONE_IN - 1, post
                post, at = [], at + 1


def phrases():
    """What the rule book calls a change; such words tell which one is meant, not that it was done."""
    for path in sorted(glob.glob("rules/everyday/*.yaml")):
        book = yaml.safe_load(open(path, encoding="utf-8"))
        for kind in ("changes", "trials"):
            for name, ways in (book.get(kind) or {}).items():
                yield from (("I " + way, ["did:" + name]) for way in ways)


def targets(labels):
    for one in labels:
        kind, _, name = one.partition(":")
        yield {"did": name, "undid": UNDONE}.get(kind, kind)
        if kind == "did":
            yield DONE


def columns(all_posts):
    counts = collections.Counter(t for _, post in all_posts for _, labels in post for t in targets(labels))
    changes = sorted(t for t, n in counts.items() if n >= LEAST and t not in OUTCOMES + [UNDONE, DONE])
    print("left out:", {t: n for t, n in counts.items() if n < LEAST})
    return changes + [DONE, UNDONE] + OUTCOMES


def vectors(model, pieces, all_posts):
    """For each post the vectors of its pieces and the place of each sentence."""
    graph = onnx.load(model)
    for name in LAYERS:
        graph.graph.output.append(helper.make_tensor_value_info(name, TensorProto.FLOAT, None))
    options = ort.SessionOptions()
    session = ort.InferenceSession(graph.SerializeToString(), options, providers=["CPUExecutionProvider"])
    for held, post in all_posts:
        ids, spans = [pieces.start], []
        for sentence, _ in post:
            part = pieces.of(sentence)
            if len(ids) + len(part) + 1 > PLACES:
                break
            spans.append((len(ids), len(ids) + len(part)))
            ids += part + [pieces.end]
        segments = np.zeros((len(spans), len(ids)), np.float32)
        for i, (first, last) in enumerate(spans):
            segments[i, first:last] = 1
        found = session.run(LAYERS, dict(ids=np.array([ids], np.int64), segments=segments))
        yield np.concatenate([one[0] for one in found], -1).astype(np.float16), spans


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

    def forward(self, pieces, mask, before):
        """pieces [n,p,width], mask [n,p], before [n,width]"""
        look = (pieces @ self.query * 4 + (mask.unsqueeze(-1) - 1) * 1e4).softmax(1)
        own = (look * (pieces @ self.value)).sum(1)
        mean = (pieces * mask.unsqueeze(-1)).sum(1) / mask.sum(1, keepdim=True).clamp(min=1)
        return own + (mean @ self.mean + before @ self.before) * self.scale * 4 + self.bias


def rows(all_posts, found, names):
    place = {name: i for i, name in enumerate(names)}
    for (held, post), (states, spans) in zip(all_posts, found):
        before = np.zeros(states.shape[1], np.float32)
        for (_, labels), (first, last) in zip(post, spans):
            if last == first:
                continue
            target = np.zeros(len(names), np.float32)
            for one in targets(labels):
                if one in place:
                    target[place[one]] = 1
            yield held, states[first:last], before, target, held is None
            before = states[first:last].astype(np.float32).mean(0)


def batch(some, width):
    longest = max(len(one[1]) for one in some)
    pieces = np.zeros((len(some), longest, width), np.float32)
    mask = np.zeros((len(some), longest), np.float32)
    for i, one in enumerate(some):
        pieces[i, : len(one[1])] = one[1]
        mask[i, : len(one[1])] = 1
    return (torch.from_numpy(pieces), torch.from_numpy(mask), torch.from_numpy(np.stack([one[2] for one in some])),
            torch.from_numpy(np.stack([one[3] for one in some])))


def train(some, width, count):
    torch.manual_seed(SEED)
    head = Head(width, count)
    steps = EPOCHS * (len(some) // BATCH)
    optimiser = torch.optim.AdamW(head.parameters(), lr=RATE, weight_decay=DECAY)
    schedule = torch.optim.lr_scheduler.OneCycleLR(optimiser, RATE, total_steps=steps, pct_start=0.1)
    order = np.random.default_rng(SEED)
    step = 0
    while step < steps:
        turn = order.permutation(len(some))
        # Sentences of like length together, so that little is padded.
        for chunk in np.array_split(turn, max(1, len(some) // (BATCH * 8))):
            chunk = sorted(chunk, key=lambda i: len(some[i][1]))
            for part in order.permutation([i for i in range(0, len(chunk), BATCH)]):
                if step >= steps:
                    break
                these = [some[i] for i in chunk[part : part + BATCH]]
                pieces, mask, before, target = batch(these, width)
                counts = torch.tensor([0.0 if one[4] else 1.0 for one in these])
                pieces = torch.nn.functional.dropout(pieces, DROPPED)
                before = torch.nn.functional.dropout(before, DROPPED)
                logits = head(pieces, mask, before)
                split = count - OTHERS
                told = torch.nn.functional.binary_cross_entropy_with_logits(logits[:, split:], target[:, split:], reduction="none").sum(1)
                loss = (told * counts).sum() / len(target)
                of_which = target[:, :split]
                said = of_which.sum(1) > 0
                if said.any():
                    share = of_which[said] / of_which[said].sum(1, keepdim=True)
                    loss = loss - (share * logits[said, :split].log_softmax(1)).sum() / len(target)
                optimiser.zero_grad()
                loss.backward()
                optimiser.step()
                schedule.step()
                step += 1
                if step % 500 == 0:
                    print(step, steps, round(loss.item(), 3), flush=True)
    return head.eval()


def probabilities(head, some, width):
    out = []
    with torch.no_grad():
        for at in range(0, len(some), 128):
            pieces, mask, before, _ = batch(some[at : at + 128], width)
            logits = head(pieces, mask, before)
            rest = logits[:, -OTHERS:].sigmoid()
            out.append(torch.cat([logits[:, :-OTHERS].softmax(1) * rest[:, :1], rest], 1).numpy())
    return np.concatenate(out)


def report(said, truth, names):
    split = len(names) - OTHERS
    for what, part in (("changes", slice(0, split)), ("done", slice(split, split + 1)), ("undone", slice(split + 1, split + 2)), ("outcomes", slice(split + 2, None))):
        for threshold in (0.3, 0.4, 0.5, 0.6, 0.7, 0.8):
            read = said[:, part] >= threshold
            right = (read & (truth[:, part] > 0)).sum()
            print(what, threshold, "precision", round(right / max(1, read.sum()), 3), "recall", round(right / max(1, truth[:, part].sum()), 3))


def write(model, out, head, names):
    """Adds the head to the model's graph, as float32."""
    graph = onnx.load(model)
    g = graph.graph
    keep = [o for o in g.output if o.name != "changes"]
    nodes = [n for n in g.node if not n.name.startswith("changes/")]
    start = [i for i in g.initializer if not i.name.startswith("changes/")]
    del g.output[:], g.node[:], g.initializer[:]
    g.output.extend(keep)

    def number(name, value):
        start.append(numpy_helper.from_array(np.asarray(value), "changes/" + name))
        return "changes/" + name

    def node(op, inputs, name, **attributes):
        nodes.append(helper.make_node(op, inputs, ["changes/" + name], name="changes/" + name, **attributes))
        return "changes/" + name

    w = {k: v.detach().numpy().astype(np.float32) for k, v in head.named_parameters()}
    one = number("axis0", np.array([0], np.int64))
    both = node("Concat", LAYERS, "both", axis=-1)  # [1,p,width]
    pieces = node("Squeeze", [both, one], "pieces")  # [p,width]
    look = node("MatMul", [pieces, number("query", w["query"] * 4)], "look")  # [p,k]
    value = node("MatMul", [pieces, number("value", w["value"])], "values")
    seen = node("Unsqueeze", ["segments", number("axis2", np.array([2], np.int64))], "seen")  # [s,p,1]
    hidden = node("Mul", [node("Sub", [seen, number("one", np.float32(1))], "less"), number("far", np.float32(1e4))], "hidden")
    weight = node("Softmax", [node("Add", [look, hidden], "masked")], "weight", axis=1)  # [s,p,k]
    own = node("ReduceSum", [node("Mul", [weight, value], "weighed"), number("axis1", np.array([1], np.int64))], "own", keepdims=0)
    total = node("ReduceSum", ["segments", "changes/axis1"], "total", keepdims=1)
    mean = node("Div", [node("MatMul", ["segments", pieces], "sum"), node("Max", [total, "changes/one"], "count")], "mean")  # [s,width]
    width = w["mean"].shape[0]
    none = number("none", np.zeros((1, width), np.float32))
    earlier = node("Slice", [node("Concat", [none, mean], "shifted", axis=0), "changes/axis0", number("minus1", np.array([-1], np.int64)),
                             "changes/axis0"], "earlier")
    rest = node("Add", [node("MatMul", [mean, number("mean_weight", w["mean"] * head.scale * 4)], "by_mean"),
                        node("MatMul", [earlier, number("before_weight", w["before"] * head.scale * 4)], "by_before")], "rest")
    logits = node("Add", [node("Add", [own, rest], "both_ways"), number("bias", w["bias"])], "logits")
    last, ends = number("last", np.array([-OTHERS], np.int64)), number("ends", np.array([9999], np.int64))
    axis1 = "changes/axis1"
    which = node("Softmax", [node("Slice", [logits, "changes/axis0", last, axis1], "of_which")], "which", axis=1)
    rest = node("Sigmoid", [node("Slice", [logits, last, ends, axis1], "others")], "others_said")
    done = node("Slice", [rest, "changes/axis0", number("first", np.array([1], np.int64)), axis1], "done")
    nodes.append(helper.make_node("Concat", [node("Mul", [which, done], "made"), rest], ["changes"], name="changes/said", axis=1))
    g.node.extend(nodes)
    g.initializer.extend(start)
    g.output.append(helper.make_tensor_value_info("changes", TensorProto.FLOAT, ["sentences", len(names)]))
    onnx.checker.check_model(graph)
    os.makedirs(out, exist_ok=True)
    onnx.save(graph, os.path.join(out, "reader.onnx"))


if __name__ == "__main__":
    reader, out = sys.argv[1:3]
    model = os.path.join(reader, "reader.onnx")
    pieces = Pieces(os.path.join(reader, "vocabulary.txt"))
    everything = list(posts())
    names = columns(everything)
    everything += [(None, [one]) for one in phrases()]
    found = list(vectors(model, pieces, everything))
    width = found[0][0].shape[1]
    lines = list(rows(everything, found, names))
    with_held = "held-out" in sys.argv[3:]
    known = [one for one in lines if not (with_held and one[0])]
    print(len(everything), "posts", len(known), "sentences", len(names), "columns", flush=True)
    head = train(known, width, len(names))
    if with_held:
        held = [one for one in lines if one[0]]
        report(probabilities(head, held, width), np.stack([one[3] for one in held]), names)
    write(model, out, head, names)
    settings = json.load(open(os.path.join(reader, "reader.json"), encoding="utf-8"))
    settings["changes"], settings["alike"] = names, ALIKE
    json.dump(settings, open(os.path.join(out, "reader.json"), "w", encoding="utf-8"), indent=1, ensure_ascii=False)
    for name in ("vocabulary.txt", "phrases.bin"):
        shutil.copy(os.path.join(reader, name), os.path.join(out, name))

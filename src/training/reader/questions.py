"""Teaches the reader what a writer asks, and adds that to the shipped file; what it reads otherwise stays as it is, to the byte.

    questions.py ENCODER_FOLDER [--layers 2] [--export READER_FOLDER]

ENCODER_FOLDER holds the encoder of the shipped reader, taken apart by shipped.py. Copies of its highest layers are taught anew on
what the layers below make of a post, with a head like that of changes.py, a column for each label. The labels are those of the
fourth column of both/*.tsv and asks/*.tsv, and of questions/*.tsv for posts that were labelled for it later: a kind of question, or
`kind:about`; `change:ID` asks whether to make a change of the rule book. READER_FOLDER/reader.onnx gets the fourth output
`questions`, for each sentence how probably it asks each thing, and reader.json its columns.
"""
import argparse, collections, copy, glob, json, os, random, sys, tempfile
import numpy as np, onnx, torch, yaml
from onnx import compose
from onnxruntime.quantization import QuantType, quantize_dynamic
from torch import nn
from torch.nn import functional as F

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import changes
from graph import Part
from model import Encoder
from text import Pieces

LEAST = 5  # questions that a label needs to be learnt
CHANGE = "change:"
NO_QUESTION = "-"
ASKED = ["Should I {}?", "Would it help to {}?", "Do I {}?", "Shall I just {}?", "Is it better to {}?", "My friend says to {}.", "Can I {}?"]
WAYS = 3  # of them for each change
WEIGHT = 2.0  # of what is asked against what is not
MOST = 400  # pieces of a post
OF_SENTENCE = 120
BELOW = changes.LAYERS[0]  # the layer that the head reads beside the last one


def named():
    """What the replies call each change; asked about so, a change is learnt that hardly anybody asks about."""
    said = yaml.safe_load(open("rules/voice/en/changes.yaml", encoding="utf-8"))
    return {name: words["bare"] for name, words in said.items() if "{" not in words["bare"]}


def columns(posts):
    counts = collections.Counter(label for _, post in posts for _, asked in post for label in asked)
    kinds = {label for label, n in counts.items() if n >= LEAST and label != NO_QUESTION and not label.startswith(CHANGE)}
    print("left out:", {label: n for label, n in counts.items() if label not in kinds and not label.startswith(CHANGE)})
    return sorted(kinds) + sorted(CHANGE + name for name in named())


def labelled():
    """(held, [(sentence, labels)]) of each post whose questions are all known and that asks something."""
    for held, _, post in changes.posts():
        asked = [labels for *_, labels in post]
        if all(one is not None for one in asked) and any(asked):
            yield held, [(sentence, labels) for (sentence, *_), labels in zip(post, asked)]


def little():
    """(held, [(sentence, labels)]) of the little posts of asks/*.tsv, of which only the questions are labelled; some ask nothing."""
    for path in sorted(glob.glob(os.path.join(os.path.dirname(os.path.abspath(__file__)), "asks", "*.tsv"))):
        posts = [post for post in open(path, encoding="utf-8").read().split("\n\n") if post.strip()]
        for at, post in enumerate(posts):
            parts = [(line.split("\t") + ["", "", ""])[:4] for line in post.split("\n") if line.strip()]
            yield at % changes.ONE_IN == changes.ONE_IN - 1, [(sentence.strip(), asked.split()) for sentence, _, _, asked in parts]


def phrases():
    """Posts of one sentence that ask about a change by its name."""
    some = random.Random(1)
    for name, bare in sorted(named().items()):
        for way in some.sample(ASKED, WAYS):
            yield False, [(way.format(bare), [CHANGE + name])]


class Asking(nn.Module):
    """The layers taught anew, and the head."""

    def __init__(self, encoder, layers, count):
        super().__init__()
        self.layers = nn.ModuleList(copy.deepcopy(layer) for layer in encoder.layers[-layers:])
        self.head = changes.Head(2 * encoder.words.weight.shape[1], count)

    def last(self, states, bias=None):
        for layer in self.layers:
            states = layer(states, bias)
        return states

    def forward(self, b):
        mask = b["mask"]
        bias = torch.zeros(mask.shape, device=mask.device).masked_fill(~mask, -1e4)[:, None, None, :]
        return self.head(torch.cat([b["below"], self.last(b["states"], bias)], -1), b["segments"], b["row"], b["before"])


@torch.no_grad()
def encoded(post, encoder, pieces, layers, places, device):
    """A post as the layers below leave it, with its targets."""
    ids, spans, target = [pieces.start], [], []
    for sentence, labels in post:
        part = pieces.of(sentence)[:OF_SENTENCE]
        if len(ids) + len(part) + 1 > MOST:
            break
        spans.append((len(ids), len(ids) + len(part)))
        target.append([places[label] for label in labels if label in places])
        ids += part + [pieces.end]
    first = len(encoder.layers) - layers - 1
    kept = encoder(torch.tensor([ids], device=device), keep=sorted({BELOW, first}))
    return dict(below=kept[0][0].half(), states=kept[-1][0].half(), spans=spans, target=target)


def batch(some, count, device):
    most = max(len(one["states"]) for one in some)
    fill = lambda name: torch.stack([F.pad(one[name].float(), (0, 0, 0, most - len(one[name]))) for one in some])
    rows = [(b, i, span, told) for b, one in enumerate(some) for i, (span, told) in enumerate(zip(one["spans"], one["target"]))]
    segments, target = torch.zeros(len(rows), most), torch.zeros(len(rows), count)
    for at, (_, _, (first, after), told) in enumerate(rows):
        segments[at, first:after] = 1
        target[at, told] = 1
    mask = torch.arange(most)[None] < torch.tensor([[len(one["states"])] for one in some])
    return dict(below=fill("below"), states=fill("states"), mask=mask.to(device), segments=segments.to(device), target=target.to(device),
                row=torch.tensor([b for b, *_ in rows], device=device), before=torch.tensor([at - 1 if i else -1 for at, (_, i, *_) in enumerate(rows)], device=device))


def learn(asking, some, count, A):
    groups = [dict(params=asking.layers.parameters(), lr=A.lr), dict(params=asking.head.parameters(), lr=A.lr * 8)]
    optimizer = torch.optim.AdamW(groups, weight_decay=0.02)
    size = -(-len(some) // A.batch)
    schedule = torch.optim.lr_scheduler.OneCycleLR(optimizer, [A.lr, A.lr * 8], total_steps=A.epochs * size, pct_start=0.1)
    for epoch in range(A.epochs):
        asking.train()
        order, total = random.sample(some, len(some)), 0.0
        for i in range(0, len(order), A.batch):
            b = batch(order[i : i + A.batch], count, A.device)
            loss = F.binary_cross_entropy_with_logits(asking(b), b["target"], reduction="sum", pos_weight=torch.tensor(WEIGHT, device=A.device))
            loss = loss / b["target"].sum().clamp(min=1)
            optimizer.zero_grad(), loss.backward(), nn.utils.clip_grad_norm_(asking.parameters(), 1.0), optimizer.step(), schedule.step()
            total += loss.item()
        print("pass", epoch + 1, "loss", round(total / size, 4), flush=True)


@torch.no_grad()
def report(asking, some, count, device):
    asking.eval()
    read = [(torch.sigmoid(asking(b)).cpu().numpy(), b["target"].cpu().numpy()) for b in (batch(some[i : i + 16], count, device) for i in range(0, len(some), 16))]
    said, truth = (np.concatenate(part) for part in zip(*read))
    for threshold in (0.2, 0.3, 0.4, 0.5, 0.6):
        right = ((said >= threshold) & (truth > 0)).sum()
        print("RESULT", threshold, "precision", round(right / max(1, (said >= threshold).sum()), 3), "recall", round(right / max(1, truth.sum()), 3), flush=True)
    asks = truth.sum(1) > 0
    print("RESULT of", int(asks.sum()), "questions the likeliest label is right in", round(float(truth[asks, said[asks].argmax(1)].mean()), 3), flush=True)


class Last(nn.Module):
    """The layers alone, to be exported."""

    def __init__(self, asking):
        super().__init__()
        self.asking = asking

    def forward(self, states):
        return self.asking.last(states)


def write(folder, asking, layers, depth, names):
    """Adds the layers, with int8 weights, and the head to the model in the folder."""
    file = os.path.join(folder, "reader.onnx")
    asking.eval().cpu()
    width = asking.layers[0].q.weight.shape[0]
    with tempfile.TemporaryDirectory() as scratch:
        full, small = os.path.join(scratch, "full.onnx"), os.path.join(scratch, "small.onnx")
        torch.onnx.export(Last(asking), torch.randn(1, 9, width), full, input_names=["states"], output_names=["last"], opset_version=17, dynamo=False,
                          dynamic_axes=dict(states={1: "pieces"}, last={1: "pieces"}))
        quantize_dynamic(full, small, weight_type=QuantType.QInt8, per_channel=True, op_types_to_quantize=["MatMul"])
        part = compose.add_prefix(onnx.load(small), "asking/")
    reader = onnx.load(file)
    part.ir_version = reader.ir_version
    outputs = list(reader.graph.output)
    start = f"/encoder/layers.{depth - layers - 1}/norm2/LayerNormalization_output_0"
    reader.graph.output.append(onnx.helper.make_tensor_value_info(start, onnx.TensorProto.FLOAT, [1, "pieces", width]))
    whole = compose.merge_models(reader, part, io_map=[(start, "asking/states")])
    del whole.graph.output[:]
    whole.graph.output.extend(outputs)
    onnx.save(whole, file)
    head = Part(file, "questions")
    both = head.node("Concat", [f"/encoder/layers.{BELOW}/norm2/LayerNormalization_output_0", "asking/last"], "both", axis=-1)
    pieces = head.node("Squeeze", [both, head.number("first_axis", np.array([0], np.int64))], "pieces")
    head.write("Sigmoid", [changes.looked(head, asking.head, pieces)], ["sentences", len(names)])
    settings = os.path.join(folder, "reader.json")
    known = json.load(open(settings, encoding="utf-8"))
    known["questions"] = names
    with open(settings, "w", encoding="utf-8") as out:
        json.dump(known, out, ensure_ascii=False, indent=1)


if __name__ == "__main__":
    ap = argparse.ArgumentParser()
    ap.add_argument("encoder"), ap.add_argument("--layers", type=int, default=2), ap.add_argument("--export", default="")
    ap.add_argument("--epochs", type=int, default=14), ap.add_argument("--lr", type=float, default=1.5e-4), ap.add_argument("--batch", type=int, default=32)
    ap.add_argument("--seed", type=int, default=3), ap.add_argument("--device", default="cuda" if torch.cuda.is_available() else "cpu")
    A = ap.parse_args()
    random.seed(A.seed), torch.manual_seed(A.seed)
    encoder = Encoder(os.path.join(A.encoder, "encoder.npz")).eval().to(A.device)
    pieces = Pieces(os.path.join(A.encoder, "vocabulary.txt"))
    posts = [*labelled(), *little()]
    names = columns(posts)
    places = {name: i for i, name in enumerate(names)}
    posts += phrases()
    read = [(held, encoded(post, encoder, pieces, A.layers, places, A.device)) for held, post in posts]
    some, others = [one for held, one in read if not held], [one for held, one in read if held]
    print(len(some), "posts to learn from,", len(others), "held out,", len(names), "labels", flush=True)
    asking = Asking(encoder, A.layers, len(names)).to(A.device)
    learn(asking, some, len(names), A)
    report(asking, others, len(names), A.device)
    if A.export:
        write(A.export, asking, A.layers, len(encoder.layers), names)

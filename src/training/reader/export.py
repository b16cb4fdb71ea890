"""Writes the trained reader as ONNX with int8 weights, and tries it by ONNX Runtime on one thread.

Inputs: ids int64 [1,pieces]; segments float [sentences,pieces], 1 where a piece belongs to the sentence.
Outputs: said float [sentences,signs,3], the probabilities of reported, denied, and asked, feared or past;
where int64 [sentences,signs], the piece that weighed most.
"""
import hashlib, os, time
import numpy as np, onnx, onnxruntime as ort, torch
from torch import nn
from onnxruntime.quantization import QuantType, quantize_dynamic


class Words(nn.Module):
    """Word vectors as int8, one scale a row."""

    def __init__(self, table):
        super().__init__()
        scale = table.abs().amax(1, keepdim=True) / 127
        self.register_buffer("words", torch.round(table / scale).to(torch.int8))
        self.register_buffer("scale", scale)

    def forward(self, ids):
        return torch.nn.functional.embedding(ids, self.words).float() * torch.nn.functional.embedding(ids, self.scale)


class Shipped(nn.Module):
    def __init__(self, reader, weights):
        super().__init__()
        self.reader = reader
        for name, w in zip(("query", "weight", "bias"), weights):
            self.register_buffer(name, w.detach().float().clone())

    def forward(self, ids, segments):
        h = self.reader.encoder(ids)
        z, a = self.reader.heads(h, segments, None, (self.query, self.weight, self.bias))
        said = torch.softmax(torch.cat([torch.zeros_like(z[..., :1]), z], -1), -1)[..., 1:]
        return said, a.argmax(1)


def export(reader, weights, pieces, held, report, file):
    reader.eval().cpu()
    reader.encoder.words = Words(reader.encoder.words.weight.detach().float())
    reader.encoder.places = nn.Parameter(reader.encoder.places[:400].detach().clone())
    shipped = Shipped(reader, [w.cpu() for w in weights]).eval()
    n = 12
    ids, seg = torch.randint(5, 900, (1, n)), torch.zeros(2, n)
    seg[0, 1:5] = 1; seg[1, 6:11] = 1
    full = file + ".float"
    torch.onnx.export(shipped, (ids, seg), full, input_names=["ids", "segments"], output_names=["said", "where"], opset_version=17, dynamo=False,
                      dynamic_axes=dict(ids={1: "pieces"}, segments={0: "sentences", 1: "pieces"}, said={0: "sentences"}, where={0: "sentences"}))
    heads = [x.name for x in onnx.load(full).graph.node if x.op_type == "MatMul" and "/encoder/" not in x.name]
    quantize_dynamic(full, file, weight_type=QuantType.QInt8, per_channel=True, op_types_to_quantize=["MatMul"], nodes_to_exclude=heads)
    print("EXPORT float", os.path.getsize(full), "int8", os.path.getsize(file), hashlib.sha256(open(file, "rb").read()).hexdigest(), flush=True)
    for name, path in (("onnx float", full), ("onnx int8", file)):
        preds, spent, words = run(path, pieces, held)
        print("EXPORT", name, "ms a post", round(spent / len(held) * 1000, 1), "ms for 110 words", round(spent / words * 110 * 1000, 1), flush=True)
        report(name, preds)


def run(path, pieces, posts):
    o = ort.SessionOptions(); o.intra_op_num_threads = 1
    s = ort.InferenceSession(path, o, providers=["CPUExecutionProvider"])
    out, spent, words = [], 0.0, 0
    for p in posts:
        x, spans = [pieces.start], []
        for part in p["s"]:
            if len(x) + len(part) + 1 > 400:
                break
            spans.append((len(x), len(x) + len(part))); x += part + [pieces.end]
        seg = np.zeros((len(spans), len(x)), np.float32)
        for i, (f, t) in enumerate(spans):
            seg[i, f:t] = 1
        t0 = time.perf_counter(); q = s.run(["said"], dict(ids=np.array([x], np.int64), segments=seg))[0]; spent += time.perf_counter() - t0
        words += len(p["text"].split()); out.append(q)
    return out, spent, words

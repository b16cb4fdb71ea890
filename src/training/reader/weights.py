"""Reads the weights of a BERT encoder from an ONNX file and keeps the word pieces that are plain ASCII.

    weights.py MODEL.onnx TOKENIZER.json OUT_FOLDER

Writes OUT_FOLDER/encoder.npz (word vectors as int8 with one scale a row, the rest float16) and
OUT_FOLDER/vocabulary.txt (one piece a line; the line number is the id).
"""
import json, os, sys
import numpy as np, onnx
from onnx import numpy_helper

model, tokenizer, out = sys.argv[1:4]
graph = onnx.load(model).graph
start = {i.name: numpy_helper.to_array(i) for i in graph.initializer}
weights = {k: v for k, v in start.items() if k.endswith(("weight", "bias")) and "MatMul" not in k}
for node in graph.node:
    if node.op_type == "MatMul":
        for name in node.input:
            if name in start and start[name].ndim == 2:
                weights[node.name.strip("/").replace("/MatMul", "").replace("/", ".") + ".weight"] = start[name].T
weights = {k.removeprefix("bert."): v for k, v in weights.items() if not k.startswith("pooler")}
pieces = sorted((i, p) for p, i in json.load(open(tokenizer, encoding="utf-8"))["model"]["vocab"].items())
special = ["[PAD]", "[UNK]", "[CLS]", "[SEP]", "[MASK]"]
kept = [(i, p) for i, p in pieces if p in special or (p.isascii() and not p.startswith("[unused"))]
words = weights.pop("embeddings.word_embeddings.weight")[[i for i, _ in kept]].astype(np.float32)
scale = np.abs(words).max(axis=1, keepdims=True) / 127
os.makedirs(out, exist_ok=True)
np.savez_compressed(os.path.join(out, "encoder.npz"), words=np.round(words / scale).astype(np.int8), scale=scale.astype(np.float32),
                    **{k: v.astype(np.float16) for k, v in weights.items()})
open(os.path.join(out, "vocabulary.txt"), "w", encoding="utf-8").write("\n".join(p for _, p in kept) + "\n")
print(len(kept), "pieces", len(weights), "arrays", sorted(weights)[:6], os.path.getsize(os.path.join(out, "encoder.npz")))

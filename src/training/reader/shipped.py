"""Takes the shipped reader apart, so that it can be trained further where its floating-point weights are gone.

    shipped.py READER_FOLDER OUT_FOLDER

READER_FOLDER holds reader.onnx, reader.json and vocabulary.txt. Writes OUT_FOLDER/encoder.npz and vocabulary.txt as
weights.py does, and heads.npz: what the reader knows of each sign. `train.py --encoder NAME --described 0` goes on
from them; a sign that is not in reader.json begins with nothing known.
"""
import json, os, re, shutil, sys
import numpy as np, onnx
from onnx import numpy_helper

PARTS = dict(q="attention.self.query", k="attention.self.key", v="attention.self.value", o="attention.output.dense",
             up="intermediate.dense", down="output.dense", norm1="attention.output.LayerNorm", norm2="output.LayerNorm")
reader, out = sys.argv[1:3]
start = {i.name: numpy_helper.to_array(i) for i in onnx.load(os.path.join(reader, "reader.onnx")).graph.initializer}
signs = json.load(open(os.path.join(reader, "reader.json"), encoding="utf-8"))["signs"]


def whole(name):
    """An int8 matrix with one scale a column, as floats."""
    return (start[name + "_quantized"].astype(np.float32) - start[name + "_zero_point"]) * start[name + "_scale"]


def number(name):
    return int(re.search(r"MatMul_(\d+)", name)[1])


encoder = {"embeddings.position_embeddings.weight": start["reader.encoder.places"],
           "embeddings.token_type_embeddings.weight": np.zeros((1, start["reader.encoder.places"].shape[1]), np.float32)}
for w in ("weight", "bias"):
    encoder[f"embeddings.LayerNorm.{w}"] = start[f"reader.encoder.norm.{w}"]
matrices = sorted((n[: -len("_quantized")] for n in start if re.fullmatch(r"onnx::MatMul_\d+_quantized", n)), key=number)
for at, name in enumerate(matrices):  # in the order in which a layer uses them
    encoder[f"encoder.layer.{at // 6}.{PARTS[('q', 'k', 'v', 'o', 'up', 'down')[at % 6]]}.weight"] = whole(name).T
for name, value in start.items():
    place = re.fullmatch(r"reader\.encoder\.layers\.(\d+)\.(\w+)\.(weight|bias)", name)
    if place:
        encoder[f"encoder.layer.{place[1]}.{PARTS[place[2]]}.{place[3]}"] = value
plain = [start[n] for n in sorted((n for n in start if re.fullmatch(r"onnx::MatMul_\d+", n)), key=number)]
query, _, first, second = plain
heads = {"own_query": query.T, "own_weight": start["weight"], "own_bias": start["bias"], "whole.weight": whole("reader.whole.weight").T,
         "whole.bias": start["reader.whole.bias"], "polarity.0.weight": first.T, "polarity.0.bias": start["reader.polarity.0.bias"],
         "polarity.2.weight": second.T, "polarity.2.bias": start["reader.polarity.2.bias"],
         "polarity_whole.weight": whole("reader.polarity_whole.weight").T, "polarity_whole.bias": start["reader.polarity_whole.bias"],
         "bias": np.zeros(3), "to_query.bias": np.zeros(query.shape[0]), "to_weight.bias": np.zeros(query.shape[0])}
os.makedirs(out, exist_ok=True)
np.savez_compressed(os.path.join(out, "encoder.npz"), words=start["reader.encoder.words.words"], scale=start["reader.encoder.words.scale"], **encoder)
np.savez_compressed(os.path.join(out, "heads.npz"), signs=np.array(signs), **{k: v.astype(np.float32) for k, v in heads.items()})
shutil.copy(os.path.join(reader, "vocabulary.txt"), os.path.join(out, "vocabulary.txt"))
print(len(matrices) // 6, "layers", len(heads), "arrays of the heads")

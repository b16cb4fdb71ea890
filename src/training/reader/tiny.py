"""Writes a model of a few hundred bytes with the inputs and outputs of export.py, for tests: tiny.py OUT_FOLDER

A sign is reported, denied or doubtful (0.96) wherever its sentence holds the word that stands for that, else 0.01.
"""
import json, os, sys
import numpy as np, onnx
from onnx import TensorProto as T, helper as h, numpy_helper as n

words = {"band-rides-up-at-the-back": ("alpha", "beta", "gamma"), "straps-slip-off": ("delta", "theta", "lambda"),
         "fainted-or-blacked-out": ("red", "green", "blue"), "fever": ("north", "south", "west"), "no-sign-of-the-book": ("one", "two", "three")}
vocabulary = ["[PAD]", "[UNK]", "[CLS]", "[SEP]", "[MASK]", ".", "the", "and"] + [w for of in words.values() for w in of]
at = np.array([[vocabulary.index(w)] for of in words.values() for w in of], np.int64)
const = lambda name, a: n.from_array(np.array(a), name)
graph = h.make_graph(
    [h.make_node("Equal", ["at", "ids"], ["same"]), h.make_node("Cast", ["same"], ["here"], to=T.FLOAT), h.make_node("Transpose", ["here"], ["turned"], perm=[1, 0]),
     h.make_node("MatMul", ["segments", "turned"], ["count"]), h.make_node("Clip", ["count", "zero", "one"], ["clipped"]), h.make_node("Mul", ["clipped", "range"], ["scaled"]),
     h.make_node("Add", ["scaled", "least"], ["flat"]), h.make_node("Reshape", ["flat", "shape"], ["said"])],
    "tiny", [h.make_tensor_value_info("ids", T.INT64, [1, "pieces"]), h.make_tensor_value_info("segments", T.FLOAT, ["sentences", "pieces"])],
    [h.make_tensor_value_info("said", T.FLOAT, ["sentences", len(words), 3])],
    [const("at", at), const("zero", np.float32(0)), const("one", np.float32(1)), const("range", np.float32(0.95)), const("least", np.float32(0.01)), const("shape", np.array([-1, len(words), 3], np.int64))])
model = h.make_model(graph, opset_imports=[h.make_opsetid("", 17)], ir_version=8)
onnx.checker.check_model(model)
os.makedirs(sys.argv[1], exist_ok=True)
onnx.save(model, os.path.join(sys.argv[1], "reader.onnx"))
with open(os.path.join(sys.argv[1], "vocabulary.txt"), "w") as file:
    file.write("\n".join(vocabulary) + "\n")
weights = dict(bias=-1.0, model=0.6, words=2.0, otherwise=-1.5, added=0.6, kept=0.3)
with open(os.path.join(sys.argv[1], "reader.json"), "w") as file:
    json.dump(dict(signs=list(words), limits=dict(pieces=40, piecesOfSentence=16, piecesOfContext=8, sentences=4),
                   joining=dict(reported=weights, denied=weights, dangerRaised=0.6, dangerShown=0.3,
                                dangerLowered=0.03, otherDangers=0.25,
                                torn=0.12)), file, indent=2)
    file.write("\n")

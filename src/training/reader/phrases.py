"""Trains the second, plain reader: logistic regression over stems, pairs of stems and the stems of
the sentence before. It reads by other means than the model and is cheap, so the two are joined.

    python src/training/reader/phrases.py OUT [held-out]

writes the weights to OUT; "held-out" leaves out the posts that hands.py holds out, to fit the joining on. From the repository's root, with
numpy, scipy and PyYAML; some four minutes on one core.
"""
import collections
import glob
import json
import re
import struct
import sys

import numpy as np
import scipy.sparse as sparse
import yaml

from hands import lines

TOKEN = re.compile(r"[a-z]+(?:'[a-z]+)?|[0-9]+")
FOLDER = "src/main/resources/easewright/reading/"
SETTINGS = json.load(open(FOLDER + "reader.json"))
ENDINGS = SETTINGS["phrases"]["endings"]
SMALL = set(SETTINGS["phrases"]["small"])
REPORTED = "+"
LEAST_COUNT = 3
STEPS = 100
RATE = 0.3
DECAY = 1e-6
SMALLEST = 0.7  # smaller weights are left out


def stem(word):
    if word[0].isdigit():
        return "#"
    for ending in ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            return word[: -len(ending)]
    return word


def stems(text):
    return [stem(word) for word in TOKEN.findall(text.lower().replace("\u2019", "'"))]


def features(sentence, before):
    """Those of the sentence, then those of the sentence before, each once."""
    words = stems(sentence)
    telling = [word for word in words if word not in SMALL]
    own = {"u " + word for word in words}
    own |= {"b " + one + " " + two for one, two in zip(telling, telling[1:])}
    own |= {"s " + one + " " + two for one, two in zip(telling, telling[2:])}
    return own, {"c " + word for word in stems(before) if word not in SMALL}


def hashed(feature):
    """FNV-1a, 32 bits, as a signed number."""
    value = 0x811C9DC5
    for byte in feature.encode():
        value = (value ^ byte) * 0x01000193 & 0xFFFFFFFF
    return value - (value >> 31 << 32)


def sentences(with_held):
    for line in lines():
        if with_held or not line.held:
            before = re.split(r"(?<=[.!?])\s+", line.context.strip())[-1]
            yield line.sentence, before, line.labels


def train(with_held, signs):
    rows = list(sentences(with_held))
    found = [features(sentence, before) for sentence, before, _ in rows]
    counts = collections.Counter(one for own, other in found for one in own | other)
    known = {}
    for one in sorted(counts):
        if counts[one] >= LEAST_COUNT:
            known[one] = len(known)
    x = matrix(found, known)
    target = np.zeros((len(rows), len(signs)), dtype=np.float32)
    place = {sign: i for i, sign in enumerate(signs)}
    for row, (_, _, labels) in enumerate(rows):
        for label in labels:
            if label[-1] == REPORTED and label[:-1] in place:
                target[row, place[label[:-1]]] = 1
    return known, *fit(x, target)


def matrix(found, known):
    columns, ends, values = [], [0], []
    for own, other in found:
        here = [known[one] for one in own | other if one in known]
        columns += here
        values += [1 / np.sqrt(max(1, len(own)))] * len(here)
        ends.append(len(columns))
    return sparse.csr_matrix(
        (np.array(values, dtype=np.float32), columns, ends), shape=(len(found), len(known)))


def fit(x, target):
    """Adam over all sentences at once."""
    across = x.T.tocsr()
    weights = [
        np.zeros((x.shape[1], target.shape[1]), dtype=np.float32),
        np.full(target.shape[1], -5, dtype=np.float32)]
    mean = [np.zeros_like(one) for one in weights]
    spread = [np.zeros_like(one) for one in weights]
    for step in range(1, STEPS + 1):
        gap = 1 / (1 + np.exp(-(x @ weights[0] + weights[1]))) - target
        slopes = [across @ gap / x.shape[0] + DECAY * weights[0], gap.mean(0)]
        rate = RATE if step < 0.6 * STEPS else 0.3 * RATE
        for i, slope in enumerate(slopes):
            mean[i] = 0.9 * mean[i] + 0.1 * slope
            spread[i] = 0.99 * spread[i] + 0.01 * slope * slope
            weights[i] -= rate * (mean[i] / (1 - 0.9**step)) / (
                np.sqrt(spread[i] / (1 - 0.99**step)) + 1e-8)
        if step % 20 == 0:
            print(step, float(np.abs(gap).sum() / x.shape[0]), flush=True)
    return weights[0], weights[1]


def write(out, known, weights, bias):
    """Big-endian: columns, a bias each, the step of a weight, then every feature with its own."""
    step = float(np.abs(weights).max()) / 127
    with open(out, "wb") as file:
        kept = []
        for feature, row in known.items():
            columns = np.nonzero(np.abs(weights[row]) >= SMALLEST)[0]
            if len(columns):
                kept.append((hashed(feature), columns, np.rint(weights[row, columns] / step)))
        file.write(struct.pack(">i", len(bias)) + bias.astype(">f4").tobytes())
        weights_in_all = sum(len(columns) for _, columns, _ in kept)
        file.write(struct.pack(">fii", step, len(kept), weights_in_all))
        for value, columns, steps in sorted(kept, key=lambda one: one[0]):
            file.write(struct.pack(">iH", value, len(columns)))
            for column, weight in zip(columns, steps):
                file.write(struct.pack(">Hb", int(column), int(weight)))


def left_to_the_model():
    """Dangers, and signs told in their words."""
    dangers = set(SETTINGS["joining"]["nearDangers"])
    for path in glob.glob("rules/catalog/signs/*.yaml"):
        for sign in yaml.safe_load(open(path, encoding="utf-8")):
            if sign.get("redFlag"):
                dangers.add(sign["id"])
    return dangers


if __name__ == "__main__":
    signs = SETTINGS["signs"]
    known, weights, bias = train("held-out" not in sys.argv[2:], signs)
    for i, sign in enumerate(signs):
        if sign in left_to_the_model():
            bias[i] = np.nan
            weights[:, i] = 0
    write(sys.argv[1], known, weights, bias)

"""Trains the reader, tries it and exports it. See README.md; `train.py --help` lists what can be varied."""
import argparse, json, math, os, random, sys, time
import numpy as np, torch
from torch.nn import functional as F

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import changes, lengths
from model import Encoder, Reader
from text import Pieces

ap = argparse.ArgumentParser()
ap.add_argument("--name", default="reader"), ap.add_argument("--encoder", default="bge"), ap.add_argument("--folder", default=".enc")
ap.add_argument("--epochs", type=int, default=10), ap.add_argument("--lr", type=float, default=1e-4), ap.add_argument("--batch", type=int, default=64)
ap.add_argument("--seconds", type=float, default=0, help="ends after so long, whatever the epochs; the learning rate follows the clock")
ap.add_argument("--seed", type=int, default=1), ap.add_argument("--described", type=int, default=1, help="0: signs have only what is learnt of them")
ap.add_argument("--posts", type=int, default=0, help="train with the open posts too"), ap.add_argument("--mask", type=float, default=0.08)
ap.add_argument("--whole", type=float, default=0.6, help="share of posts read as one sequence"), ap.add_argument("--pack", type=float, default=0.6, help="share of the other sequences of several sentences")
ap.add_argument("--weight", type=float, default=3), ap.add_argument("--teachers", default=""), ap.add_argument("--save", default=""), ap.add_argument("--export", default="")
ap.add_argument("--changes", type=float, default=0, help="weight of what is said of changes, and of the lengths that give amounts"), ap.add_argument("--frozen-layers", type=int, default=0, help="so many lowest layers, and the words, stay as they are")
ap.add_argument("--device", default="cuda" if torch.cuda.is_available() else "cpu"), ap.add_argument("--workers", type=int, default=4)
A = ap.parse_args()
random.seed(A.seed), np.random.seed(A.seed), torch.manual_seed(A.seed)
torch.set_float32_matmul_precision("high")
dev = A.device
D = json.load(open(f"{A.folder}/data.json"))
IDS = D["ids"]; IX = {s: i for i, s in enumerate(IDS)}; K = len(IDS)
COLUMNS = D["columns"]; SPLIT = len(COLUMNS) - changes.OTHERS
AMOUNTS = [lengths.NOTHING, *D["measured"], *lengths.COUNTS]; COUNTED = len(AMOUNTS) - len(lengths.COUNTS)
P = Pieces(f"{A.folder}/{A.encoder}/vocabulary.txt")
CODE = {"+": 1, "-": 2, "?": 3}
MOST = 400  # pieces of a sequence
DANGER = np.array([s in set(D["dangers"]) for s in IDS])
held = [p for p in D["posts"] if p["source"].startswith("trial")]
ours = [p for p in D["posts"] if not p["source"].startswith("trial")]
learn = ours if A.posts else [p for p in ours if p["source"] in ("dangers-hand-a.yaml", "dangers-hand-b.yaml")]
held += [p for p in ours if p not in learn]


def number(sentence, start, end, change, counts):
    """(first piece, piece after it, place of the change, place of how it counts) of a number; None where it is not learnt."""
    first, after = len(P.of(sentence[:start])), len(P.of(sentence[:end]))
    if change not in AMOUNTS or not first < after <= 120:
        return None
    return first, after, AMOUNTS.index(change), lengths.COUNTS.index(counts) if counts else lengths.UNKNOWN


for r in D["rows"]:
    r["c"], r["s"] = P.of(r["context"])[-48:], P.of(r["sentence"])[:120]
for p in D["posts"]:
    p["s"] = [P.of(s)[:160] for s in p["sentences"]]
for post in D["changes"]:
    for part in post["parts"]:
        part["s"] = P.of(part["sentence"])[:120]
        part["n"] = [at for one in part.get("lengths", []) if (at := number(part["sentence"], *one))]
by_post = {}
for r in D["rows"]:
    by_post.setdefault((r["source"], r["post"]), []).append(r)
PUNCT = {P.ids[c] for c in ".,!?;:'-" if c in P.ids}


def noisy(x):
    return [P.mask if random.random() < A.mask else i for i in x]


def sequences():
    """One pass over the data: (parts, labels of the whole post or None); a part is (pieces, signs or None, changes or None, numbers)."""
    pool, out = [], []
    for rows in by_post.values():
        if len(rows) > 1 and random.random() < A.whole:
            parts = [(r["s"], r["labels"], None, ()) for r in rows]
            while sum(len(s) + 1 for s, *_ in parts) > MOST - 20:
                parts.pop(random.choice((0, -1)))
            out.append((run_on(parts) if random.random() < 0.15 else parts, None))
        else:
            pool += rows
    random.shuffle(pool)
    while pool:
        r = pool.pop()
        if random.random() > A.pack:
            group = [r]
        else:
            group = [r] + [pool.pop() for _ in range(min(len(pool), random.randint(1, 5)))]
        parts = []
        for g in group:
            if g["c"] and random.random() < (0.8 if len(group) == 1 else 0.5):
                parts.append((g["c"], None, None, ()))
            parts.append((g["s"], g["labels"], None, ()))
        out.append((run_on(parts) if len(group) > 1 and random.random() < 0.3 else parts, None))
    if A.changes:
        out += [([(p["s"], p["signs"], p["told"], p["n"]) for p in post["parts"]], None) for post in D["changes"] if not post["held"]]
    out = [([([i for i in s if i not in PUNCT] or s, l, c, ()) for s, l, c, _ in parts], p) if random.random() < 0.15 else (parts, p) for parts, p in out]
    out += [([(s, None, None, ()) for s in p["s"]], p) for p in learn]
    return alike(out)


def run_on(parts):
    """As writers write who end no sentence."""
    merged = []
    for s, l, *_ in parts:
        if merged and l is not None and merged[-1][1] is not None and len(merged[-1][0]) + len(s) < 90 and random.random() < 0.7 \
                and all(merged[-1][1].get(k, v) == v for k, v in l.items()):
            merged[-1] = (merged[-1][0] + s, {**merged[-1][1], **l}, None, ())
        else:
            merged.append((s, l, None, ()))
    return merged


def alike(seqs):
    """Batches of sequences of like length, within sixteen batches, so that little is padded."""
    size = lambda one: sum(len(s) for s, *_ in one[0])
    random.shuffle(seqs)
    out = []
    for i in range(0, len(seqs), 16 * A.batch):
        part = sorted(seqs[i : i + 16 * A.batch], key=size)
        out += [part[j : j + A.batch] for j in range(0, len(part), A.batch)]
    random.shuffle(out)
    return out


def build(seqs, train=True):
    """The tensors of a batch."""
    ids, spans, whole, numbers = [], [], [], []
    for b, (parts, post) in enumerate(seqs):
        x, last = [P.start], -1
        for s, l, c, n in parts:
            if len(x) + len(s) + 1 > MOST:
                break
            numbers += [(len(x) + first, len(x) + after, b, change, counts) for first, after, change, counts in n]
            spans.append((len(x), len(x) + len(s), l, c, b, last)); last = len(spans) - 1
            x += (noisy(s) if train else s) + [P.end]
        ids.append(x)
        if post is not None:
            marks = np.zeros((3, K), bool)
            for kind, names in enumerate((post["present"], post["denied"], post["maybe"])):
                marks[kind, [IX[s] for s in names]] = True
            whole.append((b, torch.from_numpy(marks)))
    n = max(map(len, ids)); X = torch.full((len(ids), n), P.pad); M = torch.zeros(len(ids), n, dtype=torch.bool); S = torch.zeros(len(spans), n)
    for i, x in enumerate(ids):
        X[i, : len(x)] = torch.tensor(x); M[i, : len(x)] = True
    for i, one in enumerate(spans):
        S[i, one[0] : one[1]] = 1
    N = torch.zeros(len(numbers), n)
    for i, one in enumerate(numbers):
        N[i, one[0] : one[1]] = 1
    known = [i for i, one in enumerate(spans) if one[2] is not None]; told = [i for i, one in enumerate(spans) if one[3] is not None]
    Y, C = torch.zeros(len(known), K, dtype=torch.long), torch.zeros(len(told), len(COLUMNS))
    for j, i in enumerate(known):
        for s, v in spans[i][2].items():
            Y[j, IX[s]] = CODE[v]
    for j, i in enumerate(told):
        if spans[i][3][-1:] == [changes.OF_A_PHRASE]:
            C[j, SPLIT:] = -1  # such words name a change; they do not say that it was done
        C[j, [c for c in spans[i][3] if c >= 0]] = 1
    return dict(X=X, M=M, S=S, row=torch.tensor([one[4] for one in spans]), before=torch.tensor([one[5] for one in spans]),
                known=torch.tensor(known, dtype=torch.long), Y=Y, told=torch.tensor(told, dtype=torch.long), C=C, whole=whole,
                N=N, of=torch.tensor([one[2:] for one in numbers], dtype=torch.long).view(-1, 3))


def on(batch):
    return {k: [(b, m.to(dev)) for b, m in v] if k == "whole" else v.to(dev, non_blocking=True) for k, v in batch.items()}


desc = on(build([([(P.of(t)[:60], None, None, ())], None) for t in D["describe"]], train=False))


def known(m, heads):
    """What a reader taken apart by shipped.py knows; a new sign asks as all signs do on average, and weighs nothing."""
    state = {k: torch.tensor(v) for k, v in heads.items() if k != "signs"}
    at = {s: i for i, s in enumerate(heads["signs"])}
    new = {"own_query": state["own_query"].mean(0), "own_weight": torch.zeros_like(state["own_weight"][0]), "own_bias": torch.tensor([-4.5, -6.0, -6.0])}
    for name, start in new.items():
        state[name] = torch.stack([state[name][at[s]] if s in at else start for s in IDS])
    m.load_state_dict(state, strict=False)


def make(encoder=A.encoder):
    m = Reader(Encoder(f"{A.folder}/{encoder}/encoder.npz"), K)
    m.changes = changes.Head(2 * m.whole.weight.shape[0], len(COLUMNS))
    m.lengths = lengths.Head(2 * m.whole.weight.shape[0], len(AMOUNTS))
    heads = f"{A.folder}/{encoder}/heads.npz"
    if os.path.exists(heads):
        known(m, np.load(heads))
    return m.to(dev)


def weights(m, without=None):
    if not A.described:
        return m.weights(torch.zeros(K, m.whole.weight.shape[0], device=dev))
    return m.weights(m.described(desc["X"], desc["M"]), without)


def states(m, b):
    """The last layer's vectors, and those of the layers that changes are read by beside each other."""
    kept = m.encoder(b["X"], b["M"], keep=changes.LAYERS)
    return kept[-1], torch.cat(kept, -1)


def shares(z):
    return F.log_softmax(torch.cat([torch.zeros_like(z[..., :1]), z], -1).float(), -1)


def loss_of(m, b, teachers):
    without = torch.rand(K, device=dev) < 0.25 if A.described else None
    with torch.autocast(dev, dtype=torch.bfloat16):
        last, both = states(m, b)
        z = m.heads(last, b["S"], b["row"], weights(m, without))[0]
        said = m.changes(both, b["S"], b["row"], b["before"]).float() if A.changes else None
        measured = m.lengths(both, b["N"], b["of"][:, 0]).float() if A.changes and len(b["N"]) else None
    lp = shares(z)  # [N,K,4]
    total = z.new_zeros(())
    if len(b["known"]):
        Y = b["Y"]; ce = -lp[b["known"]].gather(-1, Y.unsqueeze(-1)).squeeze(-1)
        w = torch.where(Y > 0, A.weight, 1.0) * torch.where(torch.from_numpy(DANGER).to(dev) & (Y == 1), 2.0, 1.0)
        total = total + (ce * w).sum() / len(Y)
    for at, (yes, no, skip) in b["whole"]:
        mine = lp[b["row"] == at]
        if not len(mine):
            continue
        top = mine[..., 1].max(0).values; deny = mine[..., 2].max(0).values
        l = -top[yes].sum() * A.weight - deny[no].sum() * A.weight
        l = l - torch.log1p(-top.exp().clamp(max=0.9999))[~yes & ~skip].sum() - torch.log1p(-deny.exp().clamp(max=0.9999))[~no & ~skip].sum()
        total = total + l / len(b["X"])
    if teachers:
        with torch.no_grad(), torch.autocast(dev, dtype=torch.bfloat16):
            read = [(t, *states(t, b), w) for t, w in teachers]
            soft = sum(shares(t.heads(last, b["S"], b["row"], w)[0]).exp() for t, last, _, w in read) / len(read)
            told = sum(split(t.changes(both, b["S"], b["row"], b["before"]).float()) for t, _, both, _ in read) / len(read)
        total = 0.3 * total + 0.7 * 4 * F.kl_div(lp, soft, reduction="sum") / len(lp)
    if A.changes and len(b["told"]):
        logits, C = said[b["told"]], b["C"]
        counted = (C[:, SPLIT:] >= 0).float()
        l = (F.binary_cross_entropy_with_logits(logits[:, SPLIT:], C[:, SPLIT:], reduction="none") * counted).sum()
        which = C[:, :SPLIT]; some = which.sum(1) > 0
        share = which[some] / which[some].sum(1, keepdim=True)
        l = l - (share * logits[some, :SPLIT].log_softmax(1)).sum()
        if teachers:
            soft = told[b["told"]]
            taught = (F.binary_cross_entropy_with_logits(logits[:, SPLIT:], soft[:, SPLIT:], reduction="none") * counted).sum() - (soft[:, :SPLIT] * logits[:, :SPLIT].log_softmax(1)).sum(1)[some].sum()
            l = 0.3 * l + 0.7 * taught
        total = total + A.changes * l / len(C)
    if measured is not None:
        change, counts = b["of"][:, 1], b["of"][:, 2]
        total = total + A.changes * F.cross_entropy(measured[:, :COUNTED], change)
        if (counts != lengths.UNKNOWN).any():
            total = total + A.changes * F.cross_entropy(measured[:, COUNTED:], counts, ignore_index=lengths.UNKNOWN)
    return total


def split(logits):
    return torch.cat([logits[:, :SPLIT].softmax(1), logits[:, SPLIT:].sigmoid()], 1)


class Pass(torch.utils.data.Dataset):
    """The batches of one pass over the data, built by workers."""

    def __init__(self):
        self.batches = sequences()

    def __len__(self):
        return len(self.batches)

    def __getitem__(self, i):
        return build(self.batches[i])


def seeded(worker):
    random.seed(torch.initial_seed() % 2**32)


def fit(m, teachers=()):
    head = [p for n, p in m.named_parameters() if not n.startswith("encoder")]
    if A.frozen_layers:
        m.encoder.words.weight.requires_grad_(False)
        for layer in m.encoder.layers[: A.frozen_layers]:
            layer.requires_grad_(False)
    opt = torch.optim.AdamW([dict(params=[p for p in m.encoder.parameters() if p.requires_grad], lr=A.lr), dict(params=head, lr=A.lr * 8)], weight_decay=0.01, fused=dev == "cuda")
    start, steps = time.time(), 0; all_steps = len(sequences()) * A.epochs
    done = lambda: max(steps / all_steps, (time.time() - start) / A.seconds if A.seconds else 0)
    rate = lambda f: max(f, 0.004) / 0.1 if f < 0.1 else 0.5 + 0.5 * math.cos(math.pi * min(1, (f - 0.1) / 0.87))
    sched = torch.optim.lr_scheduler.LambdaLR(opt, lambda _: rate(done()))
    for e in range(A.epochs):
        m.train(); tot, n = 0.0, 0
        batches = torch.utils.data.DataLoader(Pass(), batch_size=None, num_workers=A.workers, worker_init_fn=seeded, prefetch_factor=8 if A.workers else None)
        for batch in batches:
            l = loss_of(m, on(batch), teachers); opt.zero_grad(); l.backward()
            torch.nn.utils.clip_grad_norm_(m.parameters(), 1.0); opt.step(); steps += 1; sched.step(); tot += l.detach(); n += 1
            if done() >= 1:
                return m
            if n % 200 == 0:
                print(A.name, "epoch", e, "step", n, "of", len(batches), "loss", round(float(l), 3), "s", round(time.time() - start), flush=True)
        print(A.name, "epoch", e, "loss", round(float(tot) / n, 3), "s", round(time.time() - start), flush=True)
    return m


@torch.no_grad()
def predict(m, posts):
    m.eval(); w = weights(m); out = []
    for p in posts:
        b = on(build([([(s, None, None, ()) for s in p["s"]], None)], train=False))
        out.append(shares(m(b["X"], b["M"], b["S"], b["row"], w)).exp()[..., 1:].cpu().numpy())
    return out


@torch.no_grad()
def report_changes(tag, m):
    """What is read of changes, and of the lengths that give amounts, in the posts held out."""
    m.eval(); said, truth, amounts, of = [], [], [], []
    for post in D["changes"]:
        if post["held"]:
            b = on(build([([(p["s"], None, p["told"], p["n"]) for p in post["parts"]], None)], train=False))
            both = states(m, b)[1]
            logits = split(m.changes(both, b["S"], b["row"], b["before"]).float())
            if len(b["N"]):
                measured = m.lengths(both, b["N"], b["of"][:, 0]).float()
                amounts.append(torch.cat([measured[:, :COUNTED].softmax(1), measured[:, COUNTED:].softmax(1)], 1).cpu().numpy())
                of.append(b["of"][:, 1:].cpu().numpy())
            logits[:, :SPLIT] *= logits[:, SPLIT : SPLIT + 1]
            said.append(logits.cpu().numpy()), truth.append(b["C"].cpu().numpy())
    if said:
        changes.report(f"RESULT {A.name} {tag}", np.concatenate(said), np.concatenate(truth), COLUMNS)
    if amounts:
        lengths.report(f"RESULT {A.name} {tag}", np.concatenate(amounts), np.concatenate(of), AMOUNTS)


def counts(posts, preds, th, thd=None):
    tp = fp = fn = ap = ax = an = 0
    for p, q in zip(posts, preds):
        top, no = q[..., 0].max(0), q[..., 1].max(0)
        yes = {IDS[k] for k in range(K) if top[k] >= th}; den = {IDS[k] for k in range(K) if no[k] >= (thd or th) and top[k] < no[k]} - yes
        g, a, mb = set(p["present"]), set(p["denied"]), set(p["maybe"])
        tp += len(yes & g); fp += len(yes - g - mb); fn += len(g - yes); ap += len(den & a); ax += len(den - a - mb); an += len(a - den)
    f = lambda t, x, n: (round(t / max(1, t + x), 3), round(t / max(1, t + n), 3), round(2 * t / max(1, 2 * t + x + n), 3))
    return f(tp, fp, fn), f(ap, ax, an)


GROUPS = dict(e1_e7=("e1", "e3", "e4", "e6", "e7"), e8_e10=("e8", "e9", "e10"), held=("held-out",))


def report(tag, preds):
    groups = {g: [] for g in [*GROUPS, "posts", "danger-d"]}
    for p, q in zip(held, preds):
        name = p["source"].removeprefix("trial-").removesuffix(".yaml")
        mine = [g for g, files in GROUPS.items() if name in files] or ["posts" if name.startswith("posts") else "danger-d"]
        groups[mine[0]].append((p, q))
    for g, pq in groups.items():
        if pq and g != "danger-d":
            ps, qs = zip(*pq)
            best = max((counts(ps, qs, t)[0][2], t) for t in np.arange(0.15, 0.95, 0.05)); bd = max((counts(ps, qs, 0.5, t)[1][2], t) for t in np.arange(0.1, 0.95, 0.05))
            print("RESULT", A.name, tag, g, "signs best at", round(float(best[1]), 2), counts(ps, qs, best[1])[0], "at .5", counts(ps, qs, .5)[0], "denied best at", round(float(bd[1]), 2), counts(ps, qs, .5, bd[1])[1], flush=True)
        elif pq:
            for t in (.2, .4, .6):
                right = sum(any(q[..., 0].max(0)[IX[s]] >= t for s in p["present"]) for p, q in pq if p["present"]); n = sum(1 for p, _ in pq if p["present"])
                alarm = [any(q[..., 0].max(0)[IX[s]] >= t for s in D["dangers"]) for p, q in pq if p["id"].startswith("harmless")]
                print("RESULT", A.name, tag, "dangers at", t, "right", right, "of", n, "false stops", sum(alarm), "of", len(alarm), flush=True)


if __name__ == "__main__":
    teachers = []
    for file in filter(None, A.teachers.split(",")):
        m = make(); m.load_state_dict(torch.load(file, map_location=dev)); m.eval().requires_grad_(False)
        with torch.no_grad():
            teachers.append((m, weights(m)))
    if teachers:
        qs = [predict(t, held) for t, _ in teachers]; report("teachers", [sum(q) / len(q) for q in zip(*qs)])
    m = fit(make(), teachers)
    report("float", predict(m, held)), report_changes("float", m)
    if A.save:
        torch.save(m.state_dict(), A.save)
    if A.export:
        from export import export
        export(m, weights(m), P, held, report, A.export)
        changes.write(A.export, m.changes.cpu(), COLUMNS)
        lengths.write(A.export, m.lengths.cpu(), AMOUNTS)
        json.dump(dict(signs=IDS, changes=COLUMNS, alike=changes.ALIKE, amounts=AMOUNTS[1:COUNTED]), open(A.export.replace(".onnx", ".json"), "w"), indent=1)

"""Trains the reader, tries it and exports it. See README.md; `train.py --help` lists what can be varied."""
import argparse, json, math, os, random, sys, time
import numpy as np, torch
from torch.nn import functional as F

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
from model import Encoder, Reader
from text import Pieces, sentences

ap = argparse.ArgumentParser()
ap.add_argument("--name", default="reader"), ap.add_argument("--encoder", default="bge"), ap.add_argument("--folder", default=".enc")
ap.add_argument("--layers", default=""), ap.add_argument("--epochs", type=int, default=10), ap.add_argument("--lr", type=float, default=1e-4)
ap.add_argument("--seconds", type=float, default=0, help="ends after so long, whatever the epochs; the learning rate follows the clock"), ap.add_argument("--batch", type=int, default=32)
ap.add_argument("--seed", type=int, default=1), ap.add_argument("--described", type=int, default=1), ap.add_argument("--free", type=int, default=1)
ap.add_argument("--hidden", type=int, default=0, help="signs held out of training, to try reading by description")
ap.add_argument("--posts", type=int, default=0, help="train with the open posts too"), ap.add_argument("--mask", type=float, default=0.08)
ap.add_argument("--pack", type=float, default=0.6, help="share of sequences of several sentences"), ap.add_argument("--weight", type=float, default=3)
ap.add_argument("--sources", default=""), ap.add_argument("--teachers", default=""), ap.add_argument("--save", default=""), ap.add_argument("--export", default="")
ap.add_argument("--device", default="cuda" if torch.cuda.is_available() else "cpu"), ap.add_argument("--afresh", type=float, default=1, help="share of the descriptions that each step reads again")
ap.add_argument("--old", type=float, default=1, help="share of the rows outside --new that each epoch takes"), ap.add_argument("--new", default="", help="sources read whole in each epoch")
ap.add_argument("--frozen-words", type=int, default=0), ap.add_argument("--frozen-layers", type=int, default=0, help="so many lowest layers stay as they are"), ap.add_argument("--threads", type=int, default=0)
ap.add_argument("--out", default=os.environ.get("OUT", "."))
A = ap.parse_args()
random.seed(A.seed), np.random.seed(A.seed), torch.manual_seed(A.seed)
dev = A.device
if A.threads:
    torch.set_num_threads(A.threads)
D = json.load(open(f"{A.folder}/data.json"))
IDS = D["ids"]; IX = {s: i for i, s in enumerate(IDS)}; K = len(IDS)
P = Pieces(f"{A.folder}/{A.encoder}/vocabulary.txt")
CODE = {"+": 1, "-": 2, "?": 3}
hidden = set(random.Random(5).sample(IDS, A.hidden))
hold = torch.tensor([s in hidden for s in IDS], device=dev)
rows = [r for r in D["rows"] if not A.sources or r["source"] in A.sources.split(",")]
rows = [r for r in rows if not hidden & set(r["labels"])]
trial = [p for p in D["posts"] if p["source"].startswith("trial")]
ours = [p for p in D["posts"] if not p["source"].startswith("trial")]
learn = ours if A.posts else [p for p in ours if p["source"] in ("dangers-hand-a.yaml", "dangers-hand-b.yaml")]
held = trial + [p for p in ours if p not in learn]
for r in rows:
    r["c"], r["s"] = P.of(r["context"])[-48:], P.of(r["sentence"])[:120]
for p in D["posts"]:
    p["s"] = [P.of(s)[:160] for s in p["sentences"]]
by_source = {}
for r in rows:
    by_source.setdefault(r["source"], []).append(r)


def noisy(x):
    return [P.mask if random.random() < A.mask else i for i in x]


PUNCT = {P.ids[c] for c in ".,!?;:'-" if c in P.ids}


def sequences():
    """One pass over the rows: lists of (pieces, labels or None), one list a sequence."""
    new = set(filter(None, A.new.split(",")))
    pool = [r for r in rows if r["source"] in new or random.random() < A.old]; random.shuffle(pool); out = []
    while pool:
        r = pool.pop()
        if random.random() > A.pack:
            group = [r]
        else:
            group = [r] + [pool.pop() for _ in range(min(len(pool), random.randint(1, 5)))]
        segs = []
        for g in group:
            if g["c"] and random.random() < (0.8 if len(group) == 1 else 0.5):
                segs.append((g["c"], None))
            segs.append((g["s"], g["labels"]))
        if len(group) > 1 and random.random() < 0.3:  # run-on writers: sentences without an end
            merged = []
            for s, l in segs:
                if merged and l is not None and merged[-1][1] is not None and len(merged[-1][0]) + len(s) < 90 and random.random() < 0.7 \
                        and all(merged[-1][1].get(k, v) == v for k, v in l.items()):
                    merged[-1] = (merged[-1][0] + s, {**merged[-1][1], **l})
                else:
                    merged.append((s, l))
            segs = merged
        if random.random() < 0.15:
            segs = [([i for i in s if i not in PUNCT] or s, l) for s, l in segs]
        out.append(("rows", segs, None))
    for p in learn if A.old >= 1 else random.sample(learn, int(len(learn) * A.old)):
        out.append(("post", [(s, None) for s in p["s"]], p))
    random.shuffle(out)
    return out


def alike(seqs):
    """Sequences of like length beside each other, within sixteen batches, so that little is padded."""
    size = lambda one: sum(len(s) for s, _ in one[1])
    out = []
    for i in range(0, len(seqs), 16 * A.batch):
        part = sorted(seqs[i : i + 16 * A.batch], key=size)
        batches = [part[j : j + A.batch] for j in range(0, len(part), A.batch)]
        random.shuffle(batches)
        out += [s for b in batches for s in b]
    return out


def build(seqs, train=True):
    ids, segs, row, labels = [], [], [], []
    for b, (_, parts, _) in enumerate(seqs):
        x, spans = [P.start], []
        for s, l in parts:
            if len(x) + len(s) + 1 > 400:
                break
            spans.append((len(x), len(x) + len(s), l)); x += (noisy(s) if train else s) + [P.end]
        ids.append(x)
        for s in spans:
            segs.append(s); row.append(b); labels.append(s[2])
    n = max(map(len, ids)); X = torch.full((len(ids), n), P.pad); M = torch.zeros(len(ids), n, dtype=torch.bool); S = torch.zeros(len(segs), n)
    for i, x in enumerate(ids):
        X[i, : len(x)] = torch.tensor(x); M[i, : len(x)] = True
    for i, (f, t, _) in enumerate(segs):
        S[i, f:t] = 1
    return X.to(dev), M.to(dev), S.to(dev), torch.tensor(row).to(dev), labels


desc = [P.of(t)[:60] for t in D["describe"]]
DX, DM, _, _, _ = build([("d", [(d, None)], None) for d in desc], train=False)


def layers():
    return [int(i) for i in A.layers.split(",")] if A.layers else None


def known(m, heads):
    """What a reader taken apart by shipped.py knows; a new sign asks as all signs do on average, and weighs nothing."""
    state = {k: torch.tensor(v) for k, v in heads.items() if k != "signs"}
    at = {s: i for i, s in enumerate(heads["signs"])}
    new = {"own_query": state["own_query"].mean(0), "own_weight": torch.zeros_like(state["own_weight"][0]), "own_bias": torch.tensor([-4.5, -6.0, -6.0])}
    for name, start in new.items():
        state[name] = torch.stack([state[name][at[s]] if s in at else start for s in IDS])
    m.load_state_dict(state, strict=False)


def make(encoder=A.encoder, take=None):
    m = Reader(Encoder(f"{A.folder}/{encoder}/encoder.npz", take), K, free=bool(A.free))
    heads = f"{A.folder}/{encoder}/heads.npz"
    if os.path.exists(heads):
        known(m, np.load(heads))
    return m.to(dev)


SEEN = []


def descriptions(m):
    """Those read again in this step have a gradient; the others are as they were read last."""
    if A.afresh >= 1:
        return m.described(DX, DM)
    if not SEEN:
        with torch.no_grad():
            SEEN.append(m.described(DX, DM))
    some = torch.randperm(K, device=dev)[: int(K * A.afresh)]
    read = m.described(DX[some], DM[some])
    now = SEEN[0].index_copy(0, some, read)
    SEEN[0] = now.detach()
    return now


def weights(m, without=None, learn=False):
    if not A.described:
        return m.weights(torch.zeros(K, m.whole.weight.shape[0], device=dev), without)
    return m.weights(descriptions(m) if learn else m.described(DX, DM), without)


DANGER = torch.tensor([s in set(D["dangers"]) for s in IDS], device=dev)


def loss_of(m, seqs, teachers):
    X, M, S, row, labels = build(seqs)
    without = (torch.rand(K, device=dev) < 0.25) & torch.tensor(bool(A.described), device=dev)
    with torch.autocast(dev, dtype=torch.bfloat16):
        z = m(X, M, S, row, weights(m, without | hold, learn=True))
    z = torch.cat([torch.zeros_like(z[..., :1]), z], -1).float(); lp = F.log_softmax(z, -1)  # [N,K,4]
    known = [i for i, l in enumerate(labels) if l is not None]; total = z.new_zeros(())
    if known:
        Y = torch.zeros(len(known), K, dtype=torch.long)
        for j, i in enumerate(known):
            for s, v in labels[i].items():
                Y[j, IX[s]] = CODE[v]
        Y = Y.to(dev); ce = -lp[known].gather(-1, Y.unsqueeze(-1)).squeeze(-1)
        w = torch.where(Y > 0, A.weight, 1.0) * torch.where(DANGER & (Y == 1), 2.0, 1.0)
        total = total + (ce * w)[:, ~hold].sum() / len(known)
    posts = [(b, p) for b, (_, _, p) in enumerate(seqs) if p is not None]
    for b, p in posts:
        mine = lp[row == b]
        if not len(mine):
            continue
        top = mine[..., 1].max(0).values; deny = mine[..., 2].max(0).values
        yes = torch.zeros(K, dtype=torch.bool); no = torch.zeros(K, dtype=torch.bool); skip = torch.zeros(K, dtype=torch.bool)
        for names, flag in ((p["present"], yes), (p["denied"], no), (p["maybe"], skip)):
            for s in names:
                flag[IX[s]] = True
        yes, no, skip = yes.to(dev), no.to(dev), skip.to(dev)
        skip |= hold
        l = -(top[yes & ~hold]).sum() * A.weight - deny[no & ~hold].sum() * A.weight
        l = l - torch.log1p(-top.exp().clamp(max=0.9999))[~yes & ~skip].sum() - torch.log1p(-deny.exp().clamp(max=0.9999))[~no & ~skip].sum()
        total = total + l / max(1, len(seqs))
    if teachers:
        with torch.no_grad(), torch.autocast(dev, dtype=torch.bfloat16):
            soft = sum(torch.softmax(torch.cat([torch.zeros_like(q[..., :1]), q], -1).float(), -1) for q in (t(X, M, S, row, w) for t, w in teachers)) / len(teachers)
        total = 0.3 * total + 0.7 * 4 * F.kl_div(lp, soft, reduction="sum") / len(labels)
    return total


def fit(m, teachers=()):
    head = [p for n, p in m.named_parameters() if not n.startswith("encoder")]
    m.encoder.words.weight.requires_grad_(not A.frozen_words)
    for layer in m.encoder.layers[: A.frozen_layers]:
        layer.requires_grad_(False)
    opt = torch.optim.AdamW([dict(params=[p for p in m.encoder.parameters() if p.requires_grad], lr=A.lr), dict(params=head, lr=A.lr * 8)], weight_decay=0.01, fused=dev == "cuda")
    size, start, steps = A.batch, time.time(), 0; all_steps = (len(sequences()) // size + 1) * A.epochs
    done = lambda: max(steps / all_steps, (time.time() - start) / A.seconds if A.seconds else 0)
    rate = lambda f: max(f, 0.004) / 0.1 if f < 0.1 else 0.5 + 0.5 * math.cos(math.pi * min(1, (f - 0.1) / 0.87))
    sched = torch.optim.lr_scheduler.LambdaLR(opt, lambda _: rate(done()))
    for e in range(A.epochs):
        m.train(); seqs = alike(sequences()); tot = 0.0
        for i in range(0, len(seqs), size):
            l = loss_of(m, seqs[i : i + size], teachers); opt.zero_grad(); l.backward()
            torch.nn.utils.clip_grad_norm_(m.parameters(), 1.0); opt.step(); steps += 1; sched.step(); tot += l.detach()
            if done() >= 1:
                return m
            if i // size % 100 == 0:
                print(A.name, "epoch", e, "step", i // size, "of", len(seqs) // size, "loss", round(float(l), 3), "s", round(time.time() - start), flush=True)
        print(A.name, "epoch", e, "loss", round(float(tot) / (len(seqs) / size), 3), "s", round(time.time() - start), flush=True)
    return m


@torch.no_grad()
def predict(m, posts, without=None):
    m.eval(); w = weights(m, without if without is not None else hold); out = []
    for p in posts:
        X, M, S, row, _ = build([("post", [(s, None) for s in p["s"]], None)], train=False)
        z = m(X, M, S, row, w); out.append(torch.softmax(torch.cat([torch.zeros_like(z[..., :1]), z], -1).float(), -1)[..., 1:].cpu().numpy())
    return out


def counts(posts, preds, th, thd=None, only=None):
    tp = fp = fn = ap = ax = an = 0
    for p, q in zip(posts, preds):
        top, no = q[..., 0].max(0), q[..., 1].max(0)
        yes = {IDS[k] for k in range(K) if top[k] >= th}; den = {IDS[k] for k in range(K) if no[k] >= (thd or th) and top[k] < no[k]} - yes
        g, a, mb = set(p["present"]), set(p["denied"]), set(p["maybe"])
        if only is not None:
            yes, den, g, a = yes & only, den & only, g & only, a & only
        tp += len(yes & g); fp += len(yes - g - mb); fn += len(g - yes); ap += len(den & a); ax += len(den - a - mb); an += len(a - den)
    f = lambda t, x, n: (round(t / max(1, t + x), 3), round(t / max(1, t + n), 3), round(2 * t / max(1, 2 * t + x + n), 3))
    return f(tp, fp, fn), f(ap, ax, an)


def report(tag, preds):
    groups = {"e1": [], "abcd": [], "danger-d": []}
    for p, q in zip(held, preds):
        groups["e1" if p["source"].startswith("trial") else "abcd" if p["source"].startswith("posts") else "danger-d"].append((p, q))
    for g, pq in groups.items():
        if pq and g != "danger-d":
            ps, qs = zip(*pq)
            best = max((counts(ps, qs, t)[0][2], t) for t in np.arange(0.15, 0.95, 0.05)); bd = max((counts(ps, qs, 0.5, t)[1][2], t) for t in np.arange(0.1, 0.95, 0.05))
            print("RESULT", A.name, tag, g, "signs best at", round(float(best[1]), 2), counts(ps, qs, best[1])[0], "at .5", counts(ps, qs, .5)[0], "denied best at", round(float(bd[1]), 2), counts(ps, qs, .5, bd[1])[1], flush=True)
            if hidden:
                print("RESULT", A.name, tag, g, "hidden signs only", [(t, counts(ps, qs, t, only=hidden)) for t in (.1, .3, .5, .7)], flush=True)
        elif pq:
            for t in (.2, .4, .6):
                right = sum(any(q[..., 0].max(0)[IX[s]] >= t for s in p["present"]) for p, q in pq if p["present"]); n = sum(1 for p, _ in pq if p["present"])
                alarm = [any(q[..., 0].max(0)[IX[s]] >= t for s in D["dangers"]) for p, q in pq if p["id"].startswith("harmless")]
                print("RESULT", A.name, tag, "dangers of hand d at", t, "right", right, "of", n, "false stops", sum(alarm), "of", len(alarm), flush=True)


if __name__ == "__main__":
    teachers = []
    for file in filter(None, A.teachers.split(",")):
        t = torch.load(file, map_location=dev); enc, lay = t["encoder"], t["layers"]
        m = make(enc, lay); m.load_state_dict(t["state"]); m.eval().requires_grad_(False)
        with torch.no_grad():
            teachers.append((m, weights(m)))
    if teachers:
        qs = [predict(t, held) for t, _ in teachers]; report("teachers", [sum(q) / len(q) for q in zip(*qs)])
    m = fit(make(take=layers()), teachers)
    preds = predict(m, held); report("float", preds)
    json.dump([dict(source=p["source"], id=p["id"], scores={IDS[k]: [round(float(q[..., c].max(0)[k]), 4) for c in range(3)] for k in range(K) if q[..., :2].max() and (q[..., :2].max(0)[k] > 0.02).any()})
               for p, q in zip(held, preds)], open(f"{A.out}/{A.name}-held.json", "w"))
    if A.save:
        torch.save(dict(encoder=A.encoder, layers=layers(), state=m.state_dict()), A.save)
    if A.export:
        from export import export
        export(m, weights(m), P, held, report, A.export, A.folder)

"""The reader: a BERT encoder over a whole post, and for every sign its own attention over each sentence.

A sign's question to the text and its weights are made of its description (name and question of the catalog, read
by the same encoder) plus a free part that is learned; without the free part a sign that was never trained is read
by its description. What was said of a sign is one of: nothing, reported (+), denied (-), asked, feared or past (?).
"""
import math
import numpy as np, torch
from torch import nn
from torch.nn import functional as F

HEADS = 12


class Layer(nn.Module):
    def __init__(self, width, inner):
        super().__init__()
        self.q, self.k, self.v, self.o = (nn.Linear(width, width) for _ in range(4))
        self.up, self.down = nn.Linear(width, inner), nn.Linear(inner, width)
        self.norm1, self.norm2 = nn.LayerNorm(width, eps=1e-12), nn.LayerNorm(width, eps=1e-12)
        self.drop = nn.Dropout(0.1)

    def forward(self, x, bias):
        b, t, w = x.shape
        q, k, v = (f(x).view(b, t, HEADS, w // HEADS).transpose(1, 2) for f in (self.q, self.k, self.v))
        if torch.onnx.is_in_onnx_export():
            a = torch.softmax(q @ k.transpose(2, 3) / math.sqrt(w // HEADS), -1) @ v
        else:
            a = F.scaled_dot_product_attention(q, k, v, attn_mask=bias)
        x = self.norm1(x + self.drop(self.o(a.transpose(1, 2).reshape(b, t, w))))
        return self.norm2(x + self.drop(self.down(F.gelu(self.up(x)))))


class Encoder(nn.Module):
    def __init__(self, file):
        super().__init__()
        z = np.load(file)
        get = lambda k: torch.tensor(z[k].astype(np.float32))
        n = 1 + max(int(k.split(".")[2]) for k in z.files if k.startswith("encoder.layer."))
        self.words = nn.Embedding.from_pretrained(torch.tensor(z["words"].astype(np.float32) * z["scale"]), freeze=False)
        self.places = nn.Parameter(get("embeddings.position_embeddings.weight") + get("embeddings.token_type_embeddings.weight")[0])
        width = self.words.weight.shape[1]
        self.norm = nn.LayerNorm(width, eps=1e-12)
        self.norm.load_state_dict(dict(weight=get("embeddings.LayerNorm.weight"), bias=get("embeddings.LayerNorm.bias")))
        self.layers, self.drop = nn.ModuleList(), nn.Dropout(0.1)
        names = dict(q="attention.self.query", k="attention.self.key", v="attention.self.value", o="attention.output.dense",
                     up="intermediate.dense", down="output.dense", norm1="attention.output.LayerNorm", norm2="output.LayerNorm")
        for i in range(n):
            layer = Layer(width, z[f"encoder.layer.{i}.intermediate.dense.bias"].shape[0])
            layer.load_state_dict({f"{a}.{w}": get(f"encoder.layer.{i}.{b}.{w}") for a, b in names.items() for w in ("weight", "bias")})
            self.layers.append(layer)

    def forward(self, ids, mask=None, keep=()):
        """The vectors of the last layer; with keep, those of each of these layers."""
        x, kept = self.drop(self.norm(self.words(ids) + self.places[: ids.shape[1]])), []
        bias = None if mask is None else torch.zeros(mask.shape, dtype=x.dtype, device=x.device).masked_fill(~mask, -1e4)[:, None, None, :]
        for i, layer in enumerate(self.layers):
            x = layer(x, bias.to(x.dtype) if bias is not None else None)
            if i in keep:
                kept.append(x)
        return kept if keep else x


class Reader(nn.Module):
    """ids [B,T], mask [B,T]; segments [N,T] of 0 and 1 and the row of each [N]: logits [N,signs,3] of +, -, ?."""

    def __init__(self, encoder, signs):
        super().__init__()
        w = encoder.words.weight.shape[1]
        self.encoder = encoder
        self.to_query, self.to_weight = nn.Linear(w, w), nn.Linear(w, w)
        self.own_query, self.own_weight = nn.Parameter(torch.randn(signs, w) * 0.02), nn.Parameter(torch.zeros(signs, w))
        self.own_bias = nn.Parameter(torch.zeros(signs, 3))
        self.bias = nn.Parameter(torch.tensor([-4.5, -6.0, -6.0]))
        self.whole = nn.Linear(w, w)
        self.polarity = nn.Sequential(nn.Linear(w, 96), nn.GELU(), nn.Linear(96, 3))
        self.polarity_whole = nn.Linear(w, 3)
        self.drop = nn.Dropout(0.15)

    def described(self, ids, mask):
        h, m = self.encoder(ids, mask), mask.unsqueeze(-1).float()
        return (h.float() * m).sum(1) / m.sum(1)

    def weights(self, d, without=None):
        """Queries and weights of all signs from their descriptions; without: which signs lack the free part."""
        keep = 1.0 if without is None else (~without).float().unsqueeze(-1)
        return self.to_query(d) + keep * self.own_query, self.to_weight(d) / 8 + keep * self.own_weight, keep * self.own_bias + self.bias

    def forward(self, ids, mask, segments, row, weights):
        h = self.encoder(ids, mask)
        return self.heads(h, segments, row, weights)[0]

    def heads(self, h, segments, row, weights):
        query, weight, bias = weights
        w = h.shape[-1]
        a = torch.matmul(h, query.t()) / math.sqrt(w)  # [B,T,K]
        a = (a[row] if row is not None else a) + (segments.unsqueeze(-1) - 1) * 1e4
        a = torch.softmax(a, 1)  # [N,T,K]
        hs = h[row] if row is not None else h.expand(segments.shape[0], -1, -1)
        v = self.drop(torch.matmul(a.transpose(1, 2), hs))  # [N,K,w]
        mean = self.drop((hs * segments.unsqueeze(-1)).sum(1) / segments.sum(1, keepdim=True).clamp(min=1))
        spoken = (v * weight).sum(-1) + torch.matmul(self.whole(mean), weight.t()) / 4
        how = self.polarity(v) + self.polarity_whole(mean).unsqueeze(1)
        return spoken.unsqueeze(-1) + how + bias, a

"""Takes a post apart as the service does (easewright.reading): sentences, and word pieces of a BERT vocabulary."""
import re, unicodedata

MOST_PIECES_OF_A_WORD = 100
END = re.compile(r"(?<=[.!?;…])\s+|\n+")


def sentences(text):
    """The sentences of a post, blank ones left out."""
    return [s.strip() for s in END.split(text) if len(s.strip()) > 1]


class Pieces:
    """Word pieces of a lower-cased text; what is not ASCII once accents are dropped is an unknown piece."""

    def __init__(self, vocabulary):
        self.ids = {p: i for i, p in enumerate(open(vocabulary, encoding="utf-8").read().split("\n")) if p}
        self.pad, self.unknown, self.start, self.end, self.mask = (self.ids[p] for p in ("[PAD]", "[UNK]", "[CLS]", "[SEP]", "[MASK]"))

    def of(self, text):
        text = unicodedata.normalize("NFD", text.lower().replace("’", "'").replace("‘", "'"))
        text = "".join(c for c in text if unicodedata.category(c) != "Mn")
        return [i for word in re.findall(r"[^\W_]+|[^\w\s]|_", text) for i in self.word(word)]

    def word(self, word):
        out, at = [], 0
        if len(word) > MOST_PIECES_OF_A_WORD:
            return [self.unknown]
        while at < len(word):
            for to in range(len(word), at, -1):
                piece = self.ids.get(("##" if at else "") + word[at:to])
                if piece is not None:
                    break
            else:
                return [self.unknown]
            out.append(piece)
            at = to
        return out

"""Writes what text.py and phrases.py make of odd and ordinary texts, for the tests of the Java side: reference.py OUT.json

Run from the repository's root. All texts are invented; the drawn ones come from a fixed seed.
"""
import json, os, random, sys

here = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, here)
from phrases import features
from text import Pieces, sentences

written = [
    "The band rides up at the back. The straps are fine! Does it need a smaller band? Help",
    "ok so i made a soft bra for my 4 month old nursing days and whenever shes due to eat im popping out the top",
    "Took in 1.5 cm (3/4\" a side);no change… Then it was worse.\n\n- bust 94 cm\n- underbust 77cm\n\nSize 75B/34B?",
    "It doesn’t gape, it ‘yawns’. “Quad-boob”, she'd call it – 100% of the time & both sides @ once.",
    "Für meine Schwester: das Gummi schneidet ein. Très serré, l'élastique ! ÅNGSTRÖM Straße İstanbul ΣΊΣΥΦΟΣ",
    "No space after.A full stop. Two  spaces.   Tab\there.\r\nWindows line\rold line\u2028separator\u0085next line\x1cfile",
    "snake_case __init__ _ a_b ___",
    "½ inch, 1¾ in, x² and Ⅻ, ٣ cm, ５ｃｍ full width, 10⁻³, №5, ①",
    "日本語のブラ。バンドがずり上がる！ 你好，世界",
    "👙🙈 it rolls 😭😭. 👩‍👩‍👧 says so; ❤️.",
    "e\u0301le\u0301gante cafe\u0301 n\u0303 a\u030a\u0323 \u0301\u0302 zalgo z\u0335\u0321a\u0336l\u0337g\u0338o",
    "word" * 24 + "word " + "a" * 100 + " " + "b" * 101 + " " + "the" * 60,
    "", " ", ".", "a", "ab", "..", ". .", "a. b. cd. ", "\n\n\n", "!?;…", "?! what ;; no … yes",
    "unaffable strapless underbust hornswoggled xqzzk bra's bras' it's",
    "non\u00a0breaking\u2003em\u200bzero\u200dwidth\u00adsoft hyphen\ufeffmark \u3000ideographic.\u3000next",
    "\u202eright to left\u202c مرحبا שלום नमस्ते ก็ \ud7a3 한국어 ﬁne ﬂat ǅ ŉ",
    "$5 + £6 = €11 ~ 10% ^ ` | < > {x} [y] \\ / # * ' \" , : -",
    "\x00\x01\x7f\x9f control \x0b vertical \x0c form. \x1f unit",
]
draw = random.Random(20)
some = list("aabcdeeinorst'’.,!?;… -_\n\t\"()0123½é") + ["the", "band", "strap", "\u0301", "\u00a0", "\u2028", "ß", "Σ", "İ", "中", "😀", "ﬁ", "²", "Å", "\r\n", ". ", " "]
drawn = ["".join(draw.choice(some) for _ in range(draw.randint(1, 60))) for _ in range(150)]
pieces = Pieces(os.path.join("src/main/resources/easewright/reading/vocabulary.txt"))
out = []
for text in written + drawn:
    own, before = features(text, text)
    out.append(dict(
        text=text, ids=pieces.of(text), sentences=[dict(text=s, ids=pieces.of(s)) for s in sentences(text)],
        own=sorted(own), before=sorted(before)))
with open(sys.argv[1], "w", encoding="utf-8") as file:
    file.write("[\n" + ",\n".join(json.dumps(one, separators=(",", ":")) for one in out) + "\n]\n")

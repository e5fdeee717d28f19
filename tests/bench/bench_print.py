"""300 leaves printed, against bare typst setting the same data with its own plain elements; then
the same with a photograph of each of the 78 cards in the layouts of its readings.

Each measurement runs in a process of its own, since typst remembers what it has set before; the
two take turns.
"""

import dataclasses
import random
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent.parent), str(HERE)]

from measuring import Row, ratios  # noqa: E402

LEAVES, TURNS = 300, 7
WHO = ("ours", "bare")
SHOTS = "-with-photographs"
TEXT = (
    "work made in company crosses open water and not a harbour the purse held upside down too many"
    " hands on one bench clear weather after damage far outdoors nobody watching kiln glaze ferry"
    " quay landlord spring room letter shelf window light fair order supplier fire cone six keep"
)
WORDS = TEXT.split()


def said(chance, count):
    """So many words that come nowhere else in that order."""
    return " ".join(chance.choice(WORDS) for _ in range(count)).capitalize() + "."


def varied(thing, chance):
    """The same tree of blocks with other words, as many in each place."""
    if isinstance(thing, dict):
        if thing.get("t") == "text":
            return thing | {"s": said(chance, max(1, len(thing["s"].split())))}
        return {key: varied(value, chance) for key, value in thing.items()}
    return [varied(each, chance) for each in thing] if isinstance(thing, list) else thing


def section():
    """300 leaves of the four kinds in tests/paper/sample.py, no two with the same words."""
    from tests.paper import sample

    chance = random.Random(7)
    kinds = (sample.reading(), sample.looked_back(), sample.card_leaf(), sample.everything())
    return sample.section(*(other(kinds[n % 4], n, chance) for n in range(LEAVES)))


def pictured(printed):
    """The same section, its readings laid with cards that the owner has photographs of."""
    from binder.cards.faces import face_svg
    from binder.cards.facts import CARDS
    from binder.cards.spreads import spread
    from binder.page.layout.layout import LaidCard, layout_svg
    from binder.paper.colours import print_colours
    from binder.paper.data import Photograph

    chance, colours, cross = random.Random(9), print_colours(), spread("celtic-cross")
    shots = {card.key: Photograph(shot(card), face_svg(card, colours)) for card in CARDS}

    def drawn():
        laid = {
            place.n: LaidCard(card, chance.random() < 0.3, picture=f"faces/{card.key}")
            for place, card in zip(cross.places, chance.sample(CARDS, 10), strict=True)
        }
        return layout_svg(cross.places, laid, colours, size=(420.0, 420.0))

    leaves = tuple(
        dataclasses.replace(leaf, svg=drawn()) if leaf.kind == "reading" else leaf
        for leaf in printed.leaves
    )
    return dataclasses.replace(printed, leaves=leaves, photographs=shots)


def shot(card):
    """A photograph as large as they are kept."""
    import io

    from PIL import Image

    made = io.BytesIO()
    grain = random.Random(card.key).randbytes(64 * 108)
    Image.frombytes("L", (64, 108), grain).resize((640, 1080)).save(made, "JPEG", quality=88)
    return made.getvalue()


def other(leaf, n, chance):
    """A leaf like this one that says other things."""
    from tests.paper.sample import p

    remade = dataclasses.replace
    return remade(
        leaf,
        uid=f"leaf-{n}",
        title=f"{leaf.title} {n}",
        over=f"{leaf.over} {n}",
        svg=leaf.svg.replace("The Star", f"Star {n}") if leaf.svg else None,
        placed=tuple(remade(it, card=f"{it.card} {n}") for it in leaf.placed),
        parts=tuple(
            remade(it, blocks=varied([*it.blocks, p("word " * 70)], chance)) for it in leaf.parts
        ),
        expectations=tuple(remade(it, text=said(chance, 12)) for it in leaf.expectations),
        look_backs=tuple(
            remade(it, blocks=varied(list(it.blocks), chance)) for it in leaf.look_backs
        ),
        turned_up=tuple(remade(it, title=said(chance, 4)) for it in leaf.turned_up),
        side_by_side=leaf.side_by_side
        and remade(
            leaf.side_by_side,
            rows=tuple(
                (aspect, tuple(said(chance, 9) for _ in cells))
                for aspect, cells in leaf.side_by_side.rows
            ),
        ),
    )


def once(which):
    """Seconds for one printing, 'ours' or 'bare', letters loaded beforehand for both."""
    import json

    import typst

    from binder.paper.data import plain
    from binder.paper.files import lay_out_faces
    from binder.paper.press import our_fonts
    from binder.paper.sheets import Sheet
    from binder.paper.typeset import typeset

    leaves, fonts = section(), our_fonts()
    if which.endswith(SHOTS):
        leaves = pictured(leaves)
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        (root / "bare.typ").write_bytes((HERE / "bare.typ").read_bytes())
        (root / "data.json").write_text(json.dumps({"section": leaves}, default=plain))
        lay_out_faces(leaves.photographs, root)
        start = time.perf_counter()
        if which.startswith("ours"):
            typeset(leaves, Sheet("a4", "2", two_sided=True))
        else:
            source = root / "bare.typ"
            typst.compile(source, root=folder, font_paths=fonts, ignore_system_fonts=True)
        return time.perf_counter() - start


def measured():
    """Seconds and peak memory in kB of each turn: {'bare': [(seconds, kB), ...], 'ours': ...}."""
    best = {f"{which}{shots}": [] for shots in ("", SHOTS) for which in ("bare", "ours")}
    for _ in range(TURNS):
        for which in best:
            ran = [sys.executable, __file__, which]
            said = subprocess.run(ran, capture_output=True, text=True, check=True).stdout
            best[which].append(tuple(map(float, said.split())))
    return best


def rows(folder):
    """300 leaves with divider, contents and punch marks over the bare library."""
    best = measured()
    for shots in ("", SHOTS):
        (ours, mine), (bare, its) = (zip(*best[f"{who}{shots}"], strict=True) for who in WHO)
        what = f"300 leaves{shots.replace('-', ' ') or ' printed'}"
        yield Row(f"{what} / bare typst, same data", ratios(ours, bare), 1.5)
        yield Row(f"{what}, memory / bare typst, same data", ratios(mine, its), 1.5)


if __name__ == "__main__":
    print(once(sys.argv[1]), resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)

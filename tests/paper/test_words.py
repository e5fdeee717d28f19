"""Whatever a student writes comes out as written, and nothing a student writes stops the press."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import LONGEST, to_html
from binder.paper.data import Part, PlacedCard, PrintExpectation, PrintLeaf, Section
from binder.paper.quotes import curled
from binder.paper.sheets import Sheet
from binder.paper.tame import tame
from binder.paper.typeset import count, typeset
from tests.paper.reading_back import bare, texts
from tests.paper.sample import p, reading, section
from tests.profiles import fewer

MARKUP = (
    r'#import "x.typ": * ; $x^2$ *star* _low_ @ref <label> `tick` \ #panic() = head // note [b]'
)


def test_typst_markup_in_a_students_words_is_printed_as_it_stands():
    leaf = replace(
        reading(title=MARKUP),
        over=MARKUP,
        under=MARKUP,
        placed=(PlacedCard(1, MARKUP, MARKUP, note=MARKUP),),
        parts=(Part(MARKUP, [p(MARKUP), {"t": "pre", "text": MARKUP}]),),
        expectations=(PrintExpectation(MARKUP, 50, MARKUP),),
    )
    tab = replace(section(leaf), binder=MARKUP, tab="#tab", order=MARKUP, notes=(MARKUP,))
    words = "".join(texts(typeset(tab, Sheet())))
    assert words.count(bare(curled(MARKUP))) >= 11
    assert bare(MARKUP) in words
    assert "#tab" in words


def test_letters_our_fonts_lack_do_not_stop_the_press():
    words = "Αα Жж ἀ 中文 🙂 א ☿ \N{NULL}\N{BELL} \u2028 end"
    pdf = typeset(section(PrintLeaf("a", "plain", words, parts=(Part("", [p(words)]),))), Sheet())
    said = "".join(texts(pdf))
    assert "ΑαЖж" in said
    assert "end" in said


def test_a_leaf_too_long_to_be_set_is_printed_to_its_last_word():
    paragraph = "Work made in company crosses open water, and five staves cross it. " * 12
    numbers = range(LONGEST // len(paragraph) + 1)
    text = "\n\n".join(f"n{n}n {paragraph}" for n in numbers) + "\n\nThe last word."
    leaf = PrintLeaf("a", "plain", "Long", parts=(Part("", blocks(to_html(text))),))
    pdf = typeset(section(leaf), Sheet())
    pages = texts(pdf)
    assert "Thelastword." in pages[-1]
    whole = "".join(pages)
    assert all(f"n{n}n" in whole for n in numbers)


def test_lists_and_quotes_nested_beyond_reason_keep_their_words():
    deep = "\n".join("  " * n + f"- level {n}x" for n in range(40)) + "\n\n" + "> " * 70 + "lowest"
    leaf = PrintLeaf("a", "plain", "Deep", parts=(Part("", blocks(to_html(deep))),))
    words = "".join(texts(typeset(section(leaf), Sheet())))
    assert all(f"level{n}x" in words for n in range(40))
    assert "lowest" in words


def test_a_word_longer_than_the_line_is_broken_not_cut_off():
    leaf = PrintLeaf("a", "plain", "T", parts=(Part("", [p("x" * 4_000 + "y")]),))
    assert "y" in texts(typeset(section(leaf), Sheet()))[-1]
    words = "".join(texts(typeset(section(leaf), Sheet())))
    assert words.count("x") >= 4_000


def test_a_wide_table_stays_on_the_sheet():
    row = "|" + "|".join(f"c{n}x" for n in range(30)) + "|"
    table = "\n".join((row, "|" + "-|" * 30, row))
    leaf = PrintLeaf("a", "plain", "T", parts=(Part("", blocks(to_html(table))),))
    words = texts(typeset(section(leaf), Sheet()))[-1]
    assert all(f"c{n}x" in words for n in range(30))


def test_taming_leaves_ordinary_writing_alone():
    written = blocks(to_html("# A\n\n- one\n    - two\n\n> so *it* was[^1]\n\n[^1]: Yes."))
    assert tame(written) == written


ANY = st.text(max_size=60)


@fewer(2)
@given(text=st.text(max_size=300), title=ANY, note=ANY, to=ANY)
def test_any_text_anywhere_can_be_printed(text, title, note, to):
    link = {"t": "link", "to": to, "said": False, "c": [{"t": "text", "s": note}]}
    web = link | {"to": "https://" + to}
    body = [*blocks(to_html(text)), p(link, web, {"t": "code", "s": text})]
    leaf = replace(
        reading(title=title),
        uid=note,
        over=note,
        parts=(Part(note, body, own=True),),
        placed=(PlacedCard(1, title, note, note=title),),
    )
    tab = Section(title, note, leaves=(leaf,), order=text, card_index=((note, title),))
    assert count(typeset(tab, Sheet("a5", "2"))) >= 3

"""Reading a finished PDF back with an independent library."""

import io
import re

import pypdf


def texts(pdf: bytes) -> list[str]:
    """The words of each page, every white space taken out (libraries differ in what they add)."""
    pages = pypdf.PdfReader(io.BytesIO(pdf)).pages
    return [re.sub(r"[\s\u200b]+", "", page.extract_text()) for page in pages]


def bare(words: str) -> str:
    """Words as `texts` gives them."""
    return re.sub(r"[\s\u200b]+", "", words)


def pages_with(pages: list[str], words: str) -> list[int]:
    """Of what `texts` gave: the numbers, from 1, of the pages on which these words stand."""
    return [n for n, page in enumerate(pages, 1) if bare(words) in page]

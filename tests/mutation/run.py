"""The share of small changes to binder/ that the tests notice, from a random sample of them.

    python -m pip install mutmut
    python tests/mutation/run.py --seed 7 --number 200 [study/readings page ...]

mutmut makes the mutants, in functions without decorators; one way more drops a call that stands
alone. Sentences, drawn faces and migrations are left out. Each mutant is put into a forked child
(so not on Windows), where the tests of the folder that mirrors its own run until one fails.
"""

from __future__ import annotations

import argparse
import importlib
import os
import random
import resource
import sys
import types
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import libcst as cst
import pytest
from libcst.metadata import MetadataWrapper
from mutmut.mutation.file_mutation import Mutation, MutationVisitor
from mutmut.mutation.mutators import mutation_operators
from mutmut.mutation.pragma_handling import IgnoredCode

ROOT = Path(__file__).parents[2]
ROOMS = ("cards", "page", "reckon", "store", "study")
LEFT_OUT = {"faces", "migrations"}
SECONDS = 300
"""Processor time a child may take; one that takes more is in an endless loop, and noticed."""


@dataclass(frozen=True, slots=True)
class Mutant:
    """A module with one function changed; `owner` is the class it stands in, or ''."""

    path: Path
    owner: str
    function: str
    before: str
    after: str
    code: str

    def of(self, names: dict[str, Any]) -> types.FunctionType:
        """The function it changes, among the names of a module."""
        found = (vars(names[self.owner]) if self.owner else names)[self.function]
        return getattr(found, "__func__", found)

    def put_in(self) -> None:
        """Change the function itself, so that it is changed wherever it was imported."""
        name = ".".join(self.path.relative_to(ROOT).with_suffix("").parts)
        fresh = types.ModuleType(name)
        exec(compile(self.code, str(self.path), "exec", dont_inherit=True), vars(fresh))
        old, new = self.of(vars(importlib.import_module(name))), self.of(vars(fresh))
        old.__code__, old.__defaults__ = new.__code__, new.__defaults__
        old.__kwdefaults__ = new.__kwdefaults__


def _dropped(node: cst.Expr) -> Iterator[cst.CSTNode]:
    if isinstance(node.value, cst.Call):
        yield cst.Pass()


def _counts(one: Mutation) -> bool:
    before = one.original_node
    said = isinstance(before, cst.SimpleString) and " " in before.value
    return isinstance(one.contained_by_top_level_function, cst.FunctionDef) and not said


def mutants(path: Path, number: int, rng: random.Random) -> Iterator[Mutant]:
    """So many mutants of a module at random, or all where there are fewer."""
    ways = [*mutation_operators, (cst.Expr, _dropped)]
    found = MutationVisitor(ways, IgnoredCode(set(), set(), set()))
    module = MetadataWrapper(cst.parse_module(path.read_text("utf-8"))).visit(found)
    classes = [part for part in module.body if isinstance(part, cst.ClassDef)]
    owners = {id(inner): one.name.value for one in classes for inner in one.body.body}
    counted = [one for one in found.mutations if _counts(one)]
    for one in rng.sample(counted, min(number, len(counted))):
        within: Any = one.contained_by_top_level_function
        yield Mutant(
            path, owners.get(id(within), ""), within.name.value,
            module.code_for_node(one.original_node), module.code_for_node(one.mutated_node),
            module.deep_replace(one.original_node, one.mutated_node).code,
        )  # fmt: skip


def noticed(mutant: Mutant) -> bool:
    """Whether a test fails in a child with the mutant in place."""
    mirror = ROOT / "tests" / mutant.path.parent.relative_to(ROOT / "binder")
    child = os.fork()
    if child == 0:
        resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, 1)
        os.dup2(nowhere, 2)
        try:
            mutant.put_in()
            os._exit(pytest.main(["-x", "-p", "no:cacheprovider", str(mirror)]))
        finally:
            os._exit(1)
    return os.waitpid(child, 0)[1] != 0


def main() -> None:
    """Draw a sample, weighted by lines, and print what was not noticed and the share that was."""
    sys.path.insert(0, str(ROOT))
    from binder.reckon.chance import wilson

    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--number", type=int, default=100)
    asked.add_argument("rooms", nargs="*", default=ROOMS)
    given = asked.parse_args()
    rng = random.Random(given.seed)
    files = [
        path for room in given.rooms for path in sorted((ROOT / "binder" / room).rglob("*.py"))
        if not LEFT_OUT & set(path.parts)
    ]  # fmt: skip
    weights = [len(path.read_text("utf-8").splitlines()) for path in files]
    wanted = Counter(rng.choices(files, weights, k=given.number))
    sample = [one for path, number in wanted.items() for one in mutants(path, number, rng)]
    left = 0
    for one in sample:
        if not noticed(one):
            left += 1
            print(f"{one.path.relative_to(ROOT)}, {one.function}\n  {one.before}\n  {one.after}")
    share = wilson(len(sample) - left, len(sample))
    if share is not None:
        ends = f"{share.low:.0%} to {share.high:.0%}"
        print(f"{len(sample) - left} of {len(sample)} were noticed ({ends})")


if __name__ == "__main__":
    main()

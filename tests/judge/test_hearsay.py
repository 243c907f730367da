"""A seller's word never gives a clean pass: every starter job asked with a catalogue of hearsay alone."""

from dataclasses import replace

import pytest

from bom.arrangement import ALL, arranged
from bom.counts import counted_beforehand, facts_of
from bom.data import folder
from bom.duties.envelope import envelope
from bom.judge.ask import Answer, judge_pairs, judge_parts
from bom.judge.verdict import Verdict
from bom.loom.layout import lay_out
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.read.load_job import load_job
from bom.read.states import states_of

JOBS = sorted((folder("templates") / "jobs").glob("*.toml"))


def hearsay(parts: Parts) -> Parts:
    words = {**dict(parts.words), "evidence": ("seller's word",) * len(parts), "exceptions": ("",) * len(parts)}
    curves = {
        name: {
            key: tuple({**row, "evidence": "seller's word"} if "evidence" in row else row for row in rows)
            for key, rows in curve.items()
        }
        for name, curve in parts.curves.items()
    }
    return replace(parts, words=words, curves=curves)


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_hearsay_never_passes_cleanly(path, catalogue: Catalogue) -> None:
    loaded = load_job(path, catalogue.margins, [])
    assert loaded is not None
    job, margins = loaded.job, catalogue.margins
    families = {name: hearsay(parts) for name, parts in catalogue.families.items()}
    clean: set[str] = set()

    def note(answers: list[Answer]) -> None:
        clean.update(
            f"{a.rule.name}: {a.judgement.what}" for a in answers if (a.judgement.verdicts == Verdict.PASS).any()
        )

    for key_at in ALL:
        job = arranged(job, key_at)
        loom = lay_out(job, margins, key_at)
        states = states_of(catalogue.states, job)
        duties = envelope(loom, facts_of(job, margins, counted_beforehand(loom, job, key_at, margins), key_at, states))
        family = {place.name: families[place.family] for place in loom.places}
        for place in loom.places:
            note(judge_parts(family[place.name], duties[place.name], margins))
        for link in loom.links:
            note(
                judge_pairs(
                    link.kind, family[link.first], family[link.second], duties[link.first], duties[link.second], margins
                )
            )
    assert not clean

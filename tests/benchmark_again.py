"""Time each conversion of one run: a job in every key arrangement, then again with one wish or item changed.

Run: python tests/benchmark_again.py [runs]. Prints CPU milliseconds, least of the runs (each with a memory of its
own), the ratio to the job's first conversion, and to a floor in the same run: laying out the same loom, which is
never spared.
"""

import gc
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

PROJECT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(PROJECT))

from bom.arrangement import ALL  # noqa: E402
from bom.convert import convert  # noqa: E402
from bom.judge.ask import judge_pairs, judge_parts, passing  # noqa: E402
from bom.loom.layout import lay_out  # noqa: E402
from bom.memory import Memory  # noqa: E402
from bom.read.catalogue import Catalogue, read_catalogue  # noqa: E402
from bom.read.job import JobFile  # noqa: E402
from bom.read.load_job import LoadedJob, load_job  # noqa: E402


def changed(job: JobFile) -> dict[str, JobFile]:
    """Give the job as it is and with small changes, each by its name."""
    wishes, donor = job.wishes, job.donor
    other_return = donor.lamp_return != "wire" if wishes.two_wire is None else not wishes.two_wire
    items = [item.model_copy(update={"keep": "no"}) if item.kind == "flasher" else item for item in donor.items]
    wished = {
        "lamp return the other way": {"two_wire": other_return},
        "contactor the other way": {"contactor": not wishes.contactor},
        "buffer battery the other way": {"buffer_battery": not wishes.buffer_battery},
    }
    return {
        "as it is": job,
        "no flasher kept": job.model_copy(update={"donor": donor.model_copy(update={"items": items})}),
        **{
            name: job.model_copy(update={"wishes": wishes.model_copy(update=update)}) for name, update in wished.items()
        },
    }


def cpu_ms(work: Callable[[], object]) -> float:
    """Time something once."""
    start = time.process_time()
    work()
    return 1000 * (time.process_time() - start)


def one_run(loaded: LoadedJob, catalogue: Catalogue) -> Iterator[tuple[str, float, float]]:
    """Convert a job in every way with one memory: what, its time, and that of the floor."""
    for answers in (judge_parts, judge_pairs, passing):
        answers.cache_clear()
    memory = Memory()
    for name, job in changed(loaded.job).items():
        for key_at in ALL:
            floor = min(cpu_ms(lambda job=job, key_at=key_at: lay_out(job, loaded.margins, key_at)) for _ in range(3))
            ms = cpu_ms(
                lambda job=job, key_at=key_at: convert(
                    job, catalogue, loaded.margins, key_at, lambda text: None, memory
                )
            )
            yield f"{name}, key at {key_at}", ms, floor


def main() -> None:
    """Time every conversion of the starter jobs, and print the least of each."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    gc.disable()
    catalogue = read_catalogue(PROJECT / "catalog")
    print("| job | conversion | CPU ms | ratio to the first | ratio to the floor |\n|---|---|---|---|---|")
    for path in sorted((PROJECT / "templates" / "jobs").glob("*.toml")):
        loaded = load_job(path, catalogue.margins, [])
        assert loaded is not None
        least: dict[str, tuple[float, float]] = {}
        for _ in range(runs + 1):  # the very first also loads modules
            for name, ms, floor in one_run(loaded, catalogue):
                before = least.get(name, (ms, floor))
                least[name] = (min(before[0], ms), min(before[1], floor))
        first = next(iter(least.values()))[0]
        for name, (ms, floor) in least.items():
            print(f"| {path.stem} | {name} | {ms:.0f} | {ms / first:.2f} | {ms / floor:.0f} |")


if __name__ == "__main__":
    main()

"""Time each conversion of one run: both key arrangements of a job, then again with one wish or one part of it changed.

Run: python tests/benchmark_again.py [runs]. Prints CPU seconds, least of the runs, and the ratio to the run's
first conversion. The floor is a bare factorisation of a dense matrix in the same process.
"""

import sys
import time
from pathlib import Path

PROJECT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(PROJECT))

from bom.convert import arrangements, convert  # noqa: E402
from bom.memory import Memory  # noqa: E402
from bom.read.catalogue import read_catalogue  # noqa: E402
from bom.read.job import JobFile  # noqa: E402
from bom.read.load_job import load_job  # noqa: E402


def silent(text: str) -> None:
    pass


def changed(job: JobFile) -> dict[str, JobFile]:
    """Give the job as it is and with small changes, each by its name."""
    wishes, donor = job.wishes, job.donor
    items = [
        item.model_copy(update={"keep": "no"}) if item.kind == "flasher" else item for item in donor.items
    ]
    return {
        "as it is": job,
        "two wire": job.model_copy(update={"wishes": wishes.model_copy(update={"two_wire": donor.lamp_return != "wire" if wishes.two_wire is None else not wishes.two_wire})}),
        "no flasher kept": job.model_copy(update={"donor": donor.model_copy(update={"items": items})}),
        "no contactor": job.model_copy(update={"wishes": wishes.model_copy(update={"contactor": not wishes.contactor})}),
    }
def main():
    import gc
    gc.disable()
    cat = read_catalogue(PROJECT/"catalog")
    for path in sorted((PROJECT/"templates/jobs").glob("*.toml")):
        loaded = load_job(path, cat.margins, [])
        memory = Memory()
        for name, job in changed(loaded.job).items():
            for key in arrangements(job):
                t=time.process_time()
                try:
                    b=convert(job,cat,loaded.margins,key,silent,memory)
                except Exception as e: print("ERR", e)
                print(path.stem,name,key,round(time.process_time()-t,3), b.passes)
if __name__ == "__main__":
    main()

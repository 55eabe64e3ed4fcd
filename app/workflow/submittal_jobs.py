"""Submittals in the making: each in a thread of its own, one at a time; the newest few are kept until fetched."""

from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass
from secrets import token_urlsafe
from threading import Lock, Thread

from app.drawing.scales import NoScaleFits

KEPT = 6
"""Submittals kept, ready or not; the oldest makes room."""

Progress = Callable[[int, int], None]
Make = Callable[[Progress], bytes]


@dataclass(slots=True)
class SubmittalJob:
    """One submittal: how many of its steps are done; at last `pdf`, or in words why there is none."""

    id: str
    project_id: str
    done: int = 0
    steps: int = 0
    pdf: bytes = b""
    trouble: str = ""

    @property
    def is_over(self) -> bool:
        return bool(self.pdf or self.trouble)


class SubmittalJobs:
    """The jobs of one server; they live no longer than it."""

    def __init__(self) -> None:
        self._jobs: OrderedDict[str, SubmittalJob] = OrderedDict()
        self._held, self._turn = Lock(), Lock()

    def start(self, project_id: str, make: Make) -> SubmittalJob:
        """Begins to make one, once those before it are done, and does not wait for it."""
        job = SubmittalJob(token_urlsafe(9), project_id)
        with self._held:
            self._jobs[job.id] = job
            while len(self._jobs) > KEPT:
                self._jobs.popitem(last=False)
        Thread(target=self._make, args=(job, make), name=f"submittal {job.id}", daemon=True).start()
        return job

    def find(self, project_id: str, job_id: str) -> SubmittalJob | None:
        """That job of that project; None for one that was never there, or no longer is."""
        with self._held:
            job = self._jobs.get(job_id)
        return job if job and job.project_id == project_id else None

    def _make(self, job: SubmittalJob, make: Make) -> None:
        def told(done: int, steps: int) -> None:
            job.done, job.steps = done, steps

        with self._turn:
            try:
                job.pdf = make(told)
            except NoScaleFits as unfit:
                job.trouble = f"{str(unfit)[:1].upper()}{str(unfit)[1:]}."
            except BaseException:
                job.trouble = "The server could not finish this submittal; its log says why."
                raise

"""Long work: each job in a thread of its own, one at a time; the newest few are kept until fetched."""

from collections import OrderedDict
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from secrets import token_urlsafe
from threading import Lock, Thread
from typing import Generic, TypeVar

KEPT = 6
"""Jobs kept, over or not; the oldest makes room."""

Made = TypeVar("Made")
Progress = Callable[[int, int], None]


@dataclass(slots=True)
class Job(Generic[Made]):
    """One piece of work: how many of its steps are done; at last what it `made`, or in words why there is nothing."""

    id: str
    project_id: str
    done: int = 0
    steps: int = 0
    made: Made | None = None
    trouble: str = ""

    @property
    def is_over(self) -> bool:
        return self.made is not None or bool(self.trouble)


class Jobs(Generic[Made]):
    """The jobs of one kind on one server; they live no longer than it.

    `noun` is what they make, `expected` the errors that say in words why there is none.
    """

    def __init__(self, noun: str, expected: Mapping[type[Exception], Callable[[Exception], str]]) -> None:
        self._noun, self._expected = noun, dict(expected)
        self._jobs: OrderedDict[str, Job[Made]] = OrderedDict()
        self._held, self._turn = Lock(), Lock()

    def start(self, project_id: str, make: Callable[[Progress], Made]) -> Job[Made]:
        """Begins one, once those before it are done, and does not wait for it."""
        job: Job[Made] = Job(token_urlsafe(9), project_id)
        with self._held:
            self._jobs[job.id] = job
            while len(self._jobs) > KEPT:
                self._jobs.popitem(last=False)
        Thread(target=self._make, args=(job, make), name=f"{self._noun} {job.id}", daemon=True).start()
        return job

    def find(self, project_id: str, job_id: str) -> Job[Made] | None:
        """That job of that project; None for one that was never there, or no longer is."""
        with self._held:
            job = self._jobs.get(job_id)
        return job if job and job.project_id == project_id else None

    def _make(self, job: Job[Made], make: Callable[[Progress], Made]) -> None:
        def told(done: int, steps: int) -> None:
            job.done, job.steps = done, steps

        with self._turn:
            try:
                job.made = make(told)
            except tuple(self._expected) as error:
                job.trouble = self._expected[type(error)](error)
            except BaseException:
                job.trouble = f"The server could not finish this {self._noun}; its log says why."
                raise

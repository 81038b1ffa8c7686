"""A cluster on this machine's loopback interface: a scheduler and workers, ended after use."""

import contextlib
import json
import os
import subprocess
import sys
import time
from pathlib import Path

HERE = Path(__file__).parent
ROOT = HERE.parent.parent


class DaskHere:
    """A scheduler and its workers; no dashboards, and nothing that is not on this machine."""

    def __init__(self, folder, workers=2, threads=1):
        self.folder, self.threads = folder, threads
        self.place = folder / "scheduler.json"
        self.workers = []
        self.scheduler = self._run("scheduler", "--port", "0", "--no-show")
        for _ in range(workers):
            self.add()
        self.address = self._address()
        if workers:  # one that is killed at once must not have been the only one there
            from distributed import Client

            with Client(self.address) as client:
                client.wait_for_workers(workers, timeout=60)

    def add(self, *, first_path=None):
        """Start one more worker; it looks for modules in `first_path` first."""
        options = ["--nthreads", str(self.threads), "--no-nanny", "--death-timeout", "60"]
        options += ["--preload", str(HERE / "allow_pieces.py")] if first_path is None else []
        self.workers.append(self._run("worker", *options, first_path=first_path))
        return self.workers[-1]

    def _run(self, what, *options, first_path=None):
        paths = [first_path, ROOT, HERE]
        env = {**os.environ, "PYTHONPATH": os.pathsep.join(str(path) for path in paths if path)}
        return subprocess.Popen(
            [
                *(sys.executable, "-m", f"distributed.cli.dask_{what}", "--host", "127.0.0.1"),
                *("--no-dashboard", "--scheduler-file", str(self.place), *options),
            ],
            env=env,
            cwd=self.folder,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )

    def _address(self):
        for _ in range(600):
            with contextlib.suppress(OSError, ValueError):
                return json.loads(self.place.read_text())["address"]
            time.sleep(0.05)
        raise AssertionError("the scheduler did not start")

    def close(self):
        for process in (*self.workers, self.scheduler):
            process.kill()
            process.wait()

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.close()

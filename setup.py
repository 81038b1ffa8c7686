"""Puts the banks that ship with the tool into what is installed; all else is in pyproject.toml.

They stand in `banks/` at the top of a checkout, where people read and change them, and become
data of the package as it is built: `itembank/banks/`.
"""

from __future__ import annotations

from pathlib import Path
from runpy import run_path

from setuptools import setup
from setuptools.command.build_py import build_py

SHIPPED = Path(__file__).parent / "itembank" / "files" / "shipped.py"


class BuildWithBanks(build_py):
    """Builds the packages, and lays the banks inside."""

    def run(self) -> None:
        """Build as ever; then write the banks, unless the checkout itself is what is installed."""
        super().run()
        if self.editable_mode:
            return
        for name, data in run_path(str(SHIPPED))["shipped_files"]().items():
            target = Path(self.build_lib) / "itembank" / "banks" / name
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(data)


setup(cmdclass={"build_py": BuildWithBanks})

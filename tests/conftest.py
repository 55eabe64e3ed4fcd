"""Shared by all tests: this folder is importable, so that `import shapes` finds `tests/shapes.py`."""

import os
import sys
from pathlib import Path

from hypothesis import settings

sys.path.insert(0, str(Path(__file__).parent))

pytest_plugins = ["quiet"]

# An example takes as long as the test beside it lets it: no law has a deadline. Where CI is set, examples do not vary.
if not os.environ.get("CI"):
    settings.register_profile("side by side", deadline=None)
    settings.load_profile("side by side")

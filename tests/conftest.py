"""Shared by all tests: this folder is importable, so that `import shapes` finds `tests/shapes.py`."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

"""`python -m tests.bench [name ...]`: run all benches, or the named ones."""

import sys
from importlib import import_module
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

BENCHES = ("layout", "fit", "submittal", "saw", "offcuts")

for name in sys.argv[1:] or BENCHES:
    import_module(f"bench.{name}").main()

"""The server as it runs for people, in a process of its own: `python served.py DATA PORT`."""

import sys
from pathlib import Path

import uvicorn

from app.main import create_app
from app.settings import Settings

if __name__ == "__main__":
    settings = Settings(Path(sys.argv[1]), port=int(sys.argv[2]))
    uvicorn.run(create_app(settings), host=settings.host, port=settings.port, log_level="warning")

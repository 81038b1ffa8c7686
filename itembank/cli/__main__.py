"""Let ``python -m itembank.cli`` do what ``itembank`` does."""

from itembank.cli.main import run

if __name__ == "__main__":
    run()

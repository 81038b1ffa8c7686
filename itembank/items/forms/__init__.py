"""The forms an answer may have to take, one file a kind of answer."""

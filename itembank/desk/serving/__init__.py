"""The desk as a server: started, guarded, its pages put together."""

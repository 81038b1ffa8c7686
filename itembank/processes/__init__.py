"""Work in other processes: the one place of the tool that starts any.

- :mod:`.child` starts one other process, talks with it, and sees to its end;
- :mod:`.beside` does one piece of work in it, begun at once or after it has loaded what it needs;
- :mod:`.pool` does many pieces on several of them, a :mod:`.team`, whatever becomes of any;
- :mod:`.work_place` says where many are done: on this machine, or on a cluster (:mod:`.cluster`).

What a caller is promised, wherever its work is done: results in order, or as they come; a fault
as the plain fault it was; a piece that has no end, or ends its process, told as such while the
rest goes on; and no process left behind, however this one ends.
"""

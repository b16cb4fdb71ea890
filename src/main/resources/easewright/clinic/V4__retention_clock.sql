-- When retention last looked at the clock, and how much of what the clock jumped ahead it does not
-- believe yet. One row; before the first look its time is 0.

create table retention_clock (
  id integer primary key,
  seen_ms bigint not null,
  held_ms bigint not null
);

insert into retention_clock (id, seen_ms, held_ms) values (1, 0, 0);

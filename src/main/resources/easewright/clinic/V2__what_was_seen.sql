-- What insight counts of a round, so that it need not read whole answers. Lists of ids are written
-- with blanks between them. Rounds kept before have none of it, and are counted by cause only.

alter table rounds add column sign varchar(80) check (length(sign) <= 80);
alter table rounds add column signs varchar;
alter table rounds add column choices varchar;
alter table rounds add column cloth varchar(80) check (length(cloth) <= 80);

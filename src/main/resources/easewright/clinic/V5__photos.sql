-- Photos, written anew by the service; they go with their case. Both copies are JPEG.

create table photos (
  id varchar(16) primary key check (length(id) <= 16),
  case_id varchar(16) not null references cases (id) on delete cascade,
  no integer not null,
  added_ms bigint not null,
  added_by varchar(80) not null check (length(added_by) <= 80),
  added_role varchar(9) not null,
  alt varchar(200) not null check (length(alt) <= 200),
  width integer not null,
  height integer not null,
  large ${bytes} not null,
  small ${bytes} not null
);

create index photos_of_case on photos (case_id);

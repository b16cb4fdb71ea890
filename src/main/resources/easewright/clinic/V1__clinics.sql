-- One text for both engines. They number rows in different words, so these are filled in; and the
-- file's engine does not look at the length of a varchar, hence the checks. Times are milliseconds
-- since 1970 in UTC: engines and drivers differ over zones, not over numbers. What hangs on a clinic
-- or a case goes with it.

create table clinics (
  id varchar(16) primary key check (length(id) <= 16),
  name varchar(80) not null check (length(name) <= 80),
  retention_days integer not null,
  version integer not null,
  opened_ms bigint not null
);

create table cases (
  id varchar(16) primary key check (length(id) <= 16),
  clinic_id varchar(16) not null references clinics (id) on delete cascade,
  nickname varchar(80) not null check (length(nickname) <= 80),
  state varchar(6) not null,
  version integer not null,
  holder varchar(16),
  rounds integer not null,
  without_progress integer not null,
  opened_ms bigint not null,
  changed_ms bigint not null,
  waiting_ms bigint
);

create index cases_of_clinic on cases (clinic_id, changed_ms);

-- Of a key only its salted hash is kept.
create table access_keys (
  id varchar(16) primary key check (length(id) <= 16),
  clinic_id varchar(16) not null references clinics (id) on delete cascade,
  case_id varchar(16) references cases (id) on delete cascade,
  role varchar(9) not null,
  name varchar(80) not null check (length(name) <= 80),
  salt varchar(32) not null,
  hash varchar(64) not null,
  issued_ms bigint not null
);

create index access_keys_of_clinic on access_keys (clinic_id);
create index access_keys_of_case on access_keys (case_id);

create table rounds (
  case_id varchar(16) not null references cases (id) on delete cascade,
  no integer not null,
  added_ms bigint not null,
  added_by varchar(80) not null check (length(added_by) <= 80),
  added_role varchar(9) not null,
  post varchar,
  request varchar not null,
  advice varchar not null,
  red_flag boolean not null,
  cause varchar(80) check (length(cause) <= 80),
  sheet varchar(80) check (length(sheet) <= 80),
  size_cut varchar(80) check (length(size_cut) <= 80),
  reply varchar,
  replied_by varchar(80) check (length(replied_by) <= 80),
  replied_ms bigint,
  outcome varchar(6),
  outcome_said varchar,
  primary key (case_id, no)
);

create table notes (
  id ${numbered} primary key,
  case_id varchar(16) not null references cases (id) on delete cascade,
  written_ms bigint not null,
  written_by varchar(80) not null check (length(written_by) <= 80),
  written_role varchar(9) not null,
  said varchar not null
);

create index notes_of_case on notes (case_id);

-- Who did what; the case stays named by its id after it is gone.
create table audit (
  id ${numbered} primary key,
  clinic_id varchar(16) not null references clinics (id) on delete cascade,
  done_ms bigint not null,
  key_id varchar(16),
  name varchar(80) not null check (length(name) <= 80),
  role varchar(9),
  deed varchar(24) not null,
  case_id varchar(16)
);

create index audit_of_clinic on audit (clinic_id, done_ms);

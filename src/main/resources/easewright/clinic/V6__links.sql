-- Links that open one thing without a key: the feed of a clinic, or one reply until a time. Of a link
-- only the hash is kept. A clinic has one feed at most; who renews it ends the one before.

create table links (
  id varchar(16) primary key check (length(id) <= 16),
  clinic_id varchar(16) not null references clinics (id) on delete cascade,
  case_id varchar(16) references cases (id) on delete cascade,
  no integer,
  hash varchar(64) not null,
  issued_ms bigint not null,
  ends_ms bigint
);

create index links_of_clinic on links (clinic_id);
create index links_of_case on links (case_id);
create unique index links_by_hash on links (hash);

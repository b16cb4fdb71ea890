package easewright.clinic;

/** The store on a PostgreSQL server. */
class StoreOnPostgresTest extends StoreTest {
  @Override
  StoreAddress empty() {
    return RealPostgres.emptyDatabase();
  }
}

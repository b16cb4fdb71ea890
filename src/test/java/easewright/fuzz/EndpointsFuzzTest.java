package easewright.fuzz;

import io.quarkus.test.junit.QuarkusTest;

/** With the store in a file. */
@QuarkusTest
class EndpointsFuzzTest extends EndpointsFuzz {}

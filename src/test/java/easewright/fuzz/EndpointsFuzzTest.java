package easewright.fuzz;

import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Tag;

/** With the store in a file. */
@Tag("long")
@QuarkusTest
class EndpointsFuzzTest extends EndpointsFuzz {}

package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.clinic.RestartedPostgres;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What can befall the server that keeps the clinics, each on a real one: a passing state is a 503
 * with Retry-After (RFC 9110, section 15.6.4) and a readiness that is down, told once in the log;
 * within five seconds of its end clinics are served again, and nothing acknowledged is lost.
 */
@Tag("long")
class ServerFaultsIT {
  private static final long HEALED_WITHIN_MS = 5000;

  /** As an operator may set it; a silent server is noticed that much sooner. */
  private static final String PATIENCE = "-Deasewright.limit.store=2S";

  @TempDir Path folder;
  private RestartedPostgres server;
  private SwitchedPort address;
  private PackagedService service;
  private AskedClinic clinic;

  @BeforeEach
  void begin() throws Exception {
    server = new RestartedPostgres(Files.createDirectory(folder.resolve("first")));
    server.execute("create database easewright");
    address = new SwitchedPort(server.port());
    service =
        PackagedService.start(
            PATIENCE,
            "-Deasewright.clinic.url=jdbc:postgresql://127.0.0.1:" + address.port() + "/easewright",
            "-Deasewright.clinic.user=postgres",
            "-Deasewright.clinic.password=postgres");
    clinic = AskedClinic.open(service.address());
    for (int i = 0; i < 5; i++) {
      assertEquals(201, clinic.add().statusCode());
    }
  }

  @AfterEach
  void end() throws IOException {
    service.close();
    address.close();
    server.close();
  }

  private void assertAway() throws Exception {
    for (int i = 0; i < 3; i++) {
      for (HttpResponse<String> refused : List.of(clinic.read(), clinic.add())) {
        assertEquals(503, refused.statusCode(), refused.body() + service.log());
        assertTrue(refused.headers().firstValue("Retry-After").isPresent());
      }
      assertEquals(503, service.readiness(), service.log());
    }
    assertEquals(
        200, clinic.sendTo("/v1/fittings", "{\"text\": \"The straps slip off.\"}").statusCode());
    assertEquals(1, told("can't be used"), service.log());
    assertEquals(0, service.log().lines().filter(line -> line.startsWith("\tat ")).count());
  }

  private long told(String what) {
    return service.log().lines().filter(line -> line.contains(what)).count();
  }

  private void assertHeals() throws Exception {
    long end = System.nanoTime() + HEALED_WITHIN_MS * 1_000_000;
    HttpResponse<String> answer = clinic.add();
    while (answer.statusCode() != 201 && System.nanoTime() < end) {
      assertEquals(503, answer.statusCode(), answer.body() + service.log());
      Thread.sleep(100);
      answer = clinic.add();
    }
    assertEquals(201, answer.statusCode(), answer.body() + service.log());
    for (int i = 0; i < 10; i++) {
      assertEquals(201, clinic.add().statusCode());
    }
    while (service.readiness() != 200 && System.nanoTime() < end) {
      Thread.sleep(100);
    }
    assertEquals(200, service.readiness());
    assertEquals(List.of(), clinic.lost());
  }

  @Test
  void a_restart_nobody_notices_but_who_asks_meanwhile() throws Exception {
    server.stop();
    server.start();
    assertHeals();
    server.stop();
    assertAway();
    server.start();
    assertHeals();
    assertEquals(1, told("in order again"), service.log());
  }

  @Test
  void another_server_takes_its_place_behind_the_same_address() throws Exception {
    server.stop();
    assertAway();
    try (RestartedPostgres second = server.copy(folder.resolve("second"))) {
      address.leadTo(second.port());
      assertHeals();
    } finally {
      server.start(); // to be ended as always
    }
  }

  /** The first server's cable was pulled, so that nobody hears of its end. */
  @Test
  void another_server_takes_the_place_of_one_that_fell_silent() throws Exception {
    address.silence(true);
    assertEquals(503, clinic.read().statusCode());
    server.stop();
    try (RestartedPostgres second = server.copy(folder.resolve("second"))) {
      address.silence(false);
      address.leadTo(second.port());
      assertHeals();
    } finally {
      server.start();
    }
  }

  @Test
  void a_server_that_says_nothing_for_a_while_is_waited_for_in_vain_and_then_used_again()
      throws Exception {
    address.silence(true);
    assertAway();
    address.silence(false);
    assertHeals();
  }

  @Test
  void a_server_out_of_connections_is_used_again_once_it_has_some() throws Exception {
    List<Connection> taken = server.takeAllConnections();
    assertAway();
    for (Connection one : taken) {
      one.close();
    }
    assertHeals();
  }

  @Test
  void a_server_that_can_only_be_read_is_used_again_once_it_can_be_written() throws Exception {
    server.execute("alter system set default_transaction_read_only = on");
    server.execute("select pg_reload_conf()");
    Thread.sleep(500);
    assertAway();
    server.execute("begin; set transaction read write; select 1; commit");
    server.execute("alter system reset default_transaction_read_only");
    server.execute("select pg_reload_conf()");
    assertHeals();
  }
}

package easewright.mcp;

import io.modelcontextprotocol.client.McpClient;
import io.modelcontextprotocol.client.McpSyncClient;
import io.modelcontextprotocol.client.transport.HttpClientStreamableHttpTransport;
import java.net.URI;
import java.util.Map;

/** The tools by the path of their operation. */
public final class Tools {
  public static final Map<String, String> BY_PATH =
      Map.of(
          "/v1/fittings", "answer_fitting",
          "/v1/intakes", "read_post",
          "/v1/size-checks", "check_size",
          "/v1/cloth-checks", "check_cloth",
          "/v1/cut-plans", "plan_cut");

  private Tools() {}

  /** A client of the service at this address, not yet greeted. */
  static McpSyncClient client(URI service) {
    return McpClient.sync(
            HttpClientStreamableHttpTransport.builder(service.toString()).endpoint("/mcp").build())
        .build();
  }
}

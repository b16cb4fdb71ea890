package easewright.clinic;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.zip.CRC32C;
import org.sqlite.Function;

/**
 * The SQL function {@code row_sum(…)} of the file engine: a checksum of a row's columns (CRC-32C,
 * RFC 3720, appendix B.4), which detects every burst of up to 32 changed bits and misses one other
 * change in 4 billion.
 */
final class RowSum extends Function {
  private static final int INTEGER = 1;
  private static final int NULL = 5;

  /** Registers it with a connection. */
  static void to(Connection connection) throws SQLException {
    Function.create(connection, "row_sum", new RowSum(), -1, Function.FLAG_DETERMINISTIC);
  }

  @Override
  protected void xFunc() throws SQLException {
    CRC32C sum = new CRC32C();
    for (int i = 0; i < args(); i++) {
      int type = value_type(i);
      byte[] value =
          switch (type) {
            case NULL -> new byte[0];
            case INTEGER -> Long.toString(value_long(i)).getBytes(StandardCharsets.US_ASCII);
            default -> value_blob(i);
          };
      sum.update(type);
      sum.update(value == null ? 0 : value.length); // an empty text arrives as null
      if (value != null) {
        sum.update(value);
      }
    }
    result(sum.getValue());
  }
}

package easewright.http;

import easewright.access.Allowance;
import easewright.answering.LineAnswers;
import easewright.request.RequestLines;
import easewright.request.RequestLines.Line;
import easewright.saying.Detail;
import easewright.saying.Problem;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import java.util.Optional;

/**
 * One bulk request and its response. Lines are answered like single fittings, one at a time on the
 * event loop, with other requests in between; a round trip to a worker thread would cost a tenth of
 * an answer. The next line waits until the previous answers are sent, and more is read only when no
 * line is left: this gives backpressure, keeps the order, and blocks no thread on the network.
 */
final class BulkExchange {
  private final RoutingContext context;
  private final HttpServerRequest request;
  private final HttpServerResponse response;
  private final LineAnswers answers;
  private final Detail detail;
  private final Allowance allowance;
  private final RequestLines lines = new RequestLines();
  private final Problem tooLarge;
  private long bytesLeft;
  private boolean ended;

  BulkExchange(
      RoutingContext context,
      LineAnswers answers,
      Detail detail,
      Allowance allowance,
      long mostBytes,
      Problem tooLarge) {
    this.context = context;
    this.request = context.request();
    this.response = context.response();
    this.answers = answers;
    this.detail = detail;
    this.allowance = allowance;
    this.bytesLeft = mostBytes;
    this.tooLarge = tooLarge;
  }

  void begin() {
    response
        .setChunked(true)
        .putHeader(HttpHeaders.CONTENT_TYPE, BulkRoute.FORM)
        .putHeader(HttpHeaders.CACHE_CONTROL, "no-store");
    if (request.isEnded()) {
      response.end();
      return;
    }
    if ("100-continue".equalsIgnoreCase(request.getHeader(HttpHeaders.EXPECT))) {
      response.writeContinue();
    }
    request.pause().handler(this::arrived).endHandler(end -> finish());
    request.fetch(1);
  }

  private void arrived(Buffer piece) {
    bytesLeft -= piece.length();
    if (bytesLeft < 0) {
      hangUp();
      return;
    }
    lines.add(piece.getBytes());
    goOn(lines.next());
  }

  private void finish() {
    ended = true;
    goOn(lines.last());
  }

  private void goOn(Optional<Line> line) {
    if (line.isPresent()) {
      answer(line.get());
    } else if (ended) {
      response.end();
    } else {
      request.fetch(1);
    }
  }

  /** If the client has disconnected, nothing drains any more and the rest is dropped. */
  private void answer(Line line) {
    if (response.closed()) {
      return;
    }
    if (!allowance.takesLine(context)) {
      write(answers.refusal(Problem.TOO_MANY, line.number()));
    } else if (line.mayHoldText()) {
      context
          .vertx()
          .executeBlocking(() -> answers.reply(line, detail), false)
          .onSuccess(this::write)
          .onFailure(context::fail);
    } else {
      write(answers.reply(line, detail));
    }
  }

  private void write(LineAnswers.Reply reply) {
    response.write(Buffer.buffer(reply.line()));
    if (response.writeQueueFull()) {
      response.drainHandler(
          drained -> {
            response.drainHandler(null);
            goOn(left());
          });
    } else {
      context.vertx().runOnContext(turn -> goOn(left()));
    }
  }

  private Optional<Line> left() {
    return ended ? Optional.empty() : lines.next();
  }

  private void hangUp() {
    response
        .end(Buffer.buffer(answers.refusal(tooLarge, lines.number()).line()))
        .onComplete(said -> request.connection().close());
  }
}

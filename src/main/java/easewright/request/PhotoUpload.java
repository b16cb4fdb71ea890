package easewright.request;

import easewright.clinic.CasePhotos;
import easewright.photo.CleanPhoto;
import easewright.photo.PhotoCleaner;
import easewright.photo.UnusablePhoto;
import easewright.rulebook.RuleBookSource;
import io.netty.buffer.Unpooled;
import io.netty.handler.codec.DecoderException;
import io.netty.handler.codec.http.DefaultFullHttpRequest;
import io.netty.handler.codec.http.FullHttpRequest;
import io.netty.handler.codec.http.HttpHeaderNames;
import io.netty.handler.codec.http.HttpMethod;
import io.netty.handler.codec.http.HttpVersion;
import io.netty.handler.codec.http.multipart.Attribute;
import io.netty.handler.codec.http.multipart.DefaultHttpDataFactory;
import io.netty.handler.codec.http.multipart.FileUpload;
import io.netty.handler.codec.http.multipart.HttpPostMultipartRequestDecoder;
import io.netty.handler.codec.http.multipart.InterfaceHttpData;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/**
 * A photo as a form sends it (multipart/form-data, RFC 7578): the file {@code photo} and the fields
 * {@code round} and {@code alt}. It is read in memory; no copy ever lies on a disk.
 */
public final class PhotoUpload {
  /** Longest description of a photo, characters: a line or two. */
  public static final int LONGEST_ALT = 200;

  private final Map<String, String> fields;
  private final byte[] file;

  private PhotoUpload(Map<String, String> fields, byte[] file) {
    this.fields = fields;
    this.file = file;
  }

  /**
   * Reads a form.
   *
   * @param form the media type, with its boundary
   * @throws FaultyRequest if it is no such form
   */
  public static PhotoUpload of(String form, byte[] body) {
    FullHttpRequest request =
        new DefaultFullHttpRequest(
            HttpVersion.HTTP_1_1, HttpMethod.POST, "/", Unpooled.wrappedBuffer(body));
    request.headers().set(HttpHeaderNames.CONTENT_TYPE, form == null ? "" : form);
    HttpPostMultipartRequestDecoder parts = null;
    try {
      parts =
          new HttpPostMultipartRequestDecoder(
              new DefaultHttpDataFactory(false), request, StandardCharsets.UTF_8);
      Map<String, String> fields = new HashMap<>();
      byte[] file = new byte[0];
      for (InterfaceHttpData part : parts.getBodyHttpDatas()) {
        if (part instanceof Attribute field) {
          fields.put(field.getName(), field.getValue().strip());
        } else if (part instanceof FileUpload upload && upload.getName().equals("photo")) {
          file = upload.get();
        }
      }
      return new PhotoUpload(fields, file);
    } catch (DecoderException | IllegalArgumentException malformed) {
      throw FaultyRequest.unreadable(
          "", "The form can't be read.", "Send multipart/form-data (RFC 7578).");
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible); // everything is in memory
    } finally {
      if (parts != null) {
        parts.destroy();
      }
    }
  }

  /** A field's value, or "". */
  public String field(String name) {
    return fields.getOrDefault(name, "");
  }

  /**
   * A photo that may be kept.
   *
   * @param round number of the round it shows
   * @param alt what it shows, in a line
   */
  public record Checked(int round, String alt, CleanPhoto photo) {}

  /**
   * Checks the form and writes the photo anew.
   *
   * @throws FaultyRequest naming every fault
   */
  public Checked checked(RuleBookSource book, PhotoCleaner cleaner) {
    RequestWords words = new RequestWords(book);
    Faults faults = new Faults(words);
    int round = field("round").matches("[1-9][0-9]{0,5}") ? Integer.parseInt(field("round")) : 0;
    if (round == 0) {
      unreadable(faults, "/round", "fault-photo-of-no-round");
    }
    String alt = field("alt").replaceAll("\\s+", " ");
    if (alt.isEmpty() || alt.length() > LONGEST_ALT || alt.indexOf(TextReader.NUL) >= 0) {
      unreadable(faults, "/alt", "fault-photo-not-described", "most", LONGEST_ALT);
    }
    CleanPhoto photo = null;
    if (file.length == 0) {
      unreadable(faults, "/photo", "fault-photo-missing");
    } else if (file.length > PhotoCleaner.MOST_BYTES) {
      unreadable(faults, "/photo", "fault-photo-too-large");
    } else {
      photo = clean(faults, cleaner);
    }
    faults.refuse();
    return new Checked(round, alt, photo);
  }

  private CleanPhoto clean(Faults faults, PhotoCleaner cleaner) {
    try {
      return cleaner.clean(file);
    } catch (UnusablePhoto refused) {
      switch (refused.reason()) {
        case OF_NO_KIND -> unreadable(faults, "/photo", "fault-photo-of-no-kind");
        case BROKEN -> unreadable(faults, "/photo", "fault-photo-broken");
        case WITH_MORE -> unreadable(faults, "/photo", "fault-photo-with-more");
        case TOO_LARGE -> unreadable(faults, "/photo", "fault-photo-too-large");
      }
      return null;
    }
  }

  private static void unreadable(Faults faults, String pointer, String key, Object... blanks) {
    faults.unreadable(
        pointer, faults.words().say(key, blanks), faults.words().say(key + "-remedy", blanks));
  }

  /** The refusal of one photo more than a case may have. */
  public static FaultyRequest oneTooMany(RuleBookSource book) {
    RequestWords words = new RequestWords(book);
    String key = "fault-photo-one-too-many";
    return FaultyRequest.impossible(
        "/photo", words.say(key, "most", CasePhotos.MOST), words.say(key + "-remedy"));
  }
}

package easewright.http;

import easewright.access.ClinicDoor;
import easewright.answering.VoiceService;
import easewright.clinic.Role;
import easewright.request.RequestJson;
import easewright.saying.ClinicNotes.VoiceNote;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.ResponseHeader;

/** How the replies of a clinic are said. */
@Path("/v1/clinics/{clinic}/voice")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Blocking
public class VoiceResource {
  private final ClinicDoor door;
  private final VoiceService voices;

  VoiceResource(ClinicDoor door, VoiceService voices) {
    this.door = door;
    this.voices = voices;
  }

  @GET
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public VoiceNote read(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key, @PathParam("clinic") String clinic) {
    return VoiceNote.of(voices.read(door.enter(key, clinic)));
  }

  @PUT
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public VoiceNote change(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      byte[] body) {
    return VoiceNote.of(
        voices.change(
            door.enter(key, clinic, Role.ORGANISER, Role.HELPER), RequestJson.parse(body)));
  }
}

import client.ApiClient;
import client.ApiException;
import client.api.ChecksApi;
import client.api.FittingsApi;
import client.api.PlansApi;
import client.model.Adjustment;
import client.model.Answer;
import client.model.Body;
import client.model.Cause;
import client.model.CutCloth;
import client.model.CutPlan;
import client.model.CutRequest;
import client.model.CutRequestCloths;
import client.model.Fitting;
import client.model.PatternChoice;
import client.model.ReportedSign;
import client.model.SizeAnswer;
import client.model.SizeQuestion;
import java.util.List;

/**
 * One garment from tape to toile, through a client that OpenAPI Generator made of the service's
 * /openapi-3.0.json: which size to cut, in which order to sew it, and what to change afterwards.
 * Make the client with
 *
 * <pre>java -jar openapi-generator-cli.jar generate -g java --library native -o client \
 *   -i http://localhost:8080/openapi-3.0.json --additional-properties=invokerPackage=client,\
 * apiPackage=client.api,modelPackage=client.model,openApiNullable=false,useJakartaEe=true,\
 * containerDefaultToNull=true</pre>
 */
public final class MakeAlong {
  private MakeAlong() {}

  public static void main(String... arguments) throws ApiException {
    ApiClient service = new ApiClient();
    service.updateBaseUri(arguments.length > 0 ? arguments[0] : "http://localhost:8080");
    // A measurement is a text, an object with how it was taken, or a list of either.
    Body body = new Body().bust(List.of("36 3/4 in", "93 cm")).underbust("30 1/4 in");
    PatternChoice pattern = new PatternChoice().sheet("quillmere-top");

    SizeAnswer check =
        new ChecksApi(service).checkSize(new SizeQuestion().body(body).pattern(pattern), null);
    System.out.println("Size to cut: " + check.getTake().getSize());

    CutRequest cut =
        new CutRequest()
            .pattern(pattern)
            .size(check.getTake().getSize())
            .cloths(
                new CutRequestCloths()
                    .main(new CutCloth().width("150 cm").stretch(CutCloth.StretchEnum.CROSSWISE))
                    .lining(new CutCloth().cutFrom(CutCloth.CutFromEnum.MAIN)));
    CutPlan plan = new PlansApi(service).planCut(cut, null);
    plan.getBuy().forEach(one -> System.out.println("To buy: " + one.getBuy().getText()));
    plan.getOrder().forEach(step -> System.out.println("Step: " + step));

    Fitting fitting =
        new Fitting()
            .body(body)
            .pattern(pattern)
            .sizeCut("80C")
            .addSignsItem(new ReportedSign().sign("band-rides-up-at-the-back"))
            .addSignsItem(new ReportedSign().sign("band-pulls-off-the-body"));
    Answer answer = new FittingsApi(service).answerFitting(fitting, null, null);
    for (Cause cause : answer.getCauses()) {
      System.out.println("Likely: " + cause.getName());
    }
    for (Adjustment change : answer.getAdjustments()) {
      System.out.println("Change: " + change.getDoes());
    }

    // What the answer gives to go on from, with the reply to its first question.
    Fitting next = answer.getSoFar();
    next.addSignsItem(new ReportedSign().sign(answer.getQuestions().get(0).getSign()));
    new FittingsApi(service)
        .answerFitting(next, null, null)
        .getCauses()
        .forEach(cause -> System.out.println("Then: " + cause.getName()));

    try {
      new FittingsApi(service).answerFitting(new Fitting().sizeCut("a size"), null, null);
    } catch (ApiException refused) {
      System.out.println("Refused: " + refused.getResponseBody());
    }
  }
}

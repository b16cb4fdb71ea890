package easewright.request;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.fitting.Fitting;
import easewright.fitting.GivenAmount;
import easewright.measure.MeasuringMethod;
import easewright.measure.UnitSystem;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pointers are those of RFC 6901; lengths use the exact inch of 25.4 mm. */
class FittingReaderTest {
  private static final String SIGN = "'signs': [{'sign': 'neckline-gapes'}]";

  static Fitting read(String json) {
    return Names.reader()
        .read(RequestJson.parse(json.replace('\'', '"').getBytes(StandardCharsets.UTF_8)));
  }

  private static FaultyRequest refused(String json) {
    return assertThrows(FaultyRequest.class, () -> read(json), json);
  }

  @ParameterizedTest(name = "{1}: {0}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // what is written | pointer | status | part of the problem | part of the remedy
        "[] | `` | 400 | object | these fields",
        "7 | `` | 400 | object | these fields",
        "null | `` | 400 | object | these fields",
        "{} | `` | 422 | nothing to go on | at least one sign",
        "{'body': {'bust': '94 cm'}} | `` | 422 | nothing to go on | bust and underbust",
        "{'sings': []} | /sings | 400 | No field | Did you mean \"signs\"?",
        "{'a/b~c': 1} | /a~1b~0c | 400 | No field | Known are",
        "{'body': {'bast': '94 cm'}} | /body/bast | 400 | No field | \"bust\"",
        "{'body': {'under-bust': '77 cm'}} | /body/under-bust | 400 | No field | \"underbust\"",
        "{'body': 'slim'} | /body | 400 | object | bust, bustLeft, bustRight, underbust",
        "{'body': {'bust': 94}} | /body/bust | 400 | no unit | 86.5 cm",
        "{'body': {'bust': '94'}} | /body/bust | 400 | no unit | 86.5 cm",
        "{'body': {'bust': null}} | `` | 422 | nothing to go on | at least one sign",
        "{'body': {'bust': [null]}} | /body/bust/0 | 400 | quantity | as a text",
        "{'body': {'bust': true}} | /body/bust | 400 | quantity | as a text",
        "{'body': {'bust': '94 parsecs'}} | /body/bust | 400 | not known | 34 in",
        "{'body': {'bust': '94 %'}} | /body/bust | 400 | a percentage | a length",
        "{'body': {'bust': []}} | /body/bust | 400 | empty | one measurement",
        "{'body': {'bust': [94]}} | /body/bust/0 | 400 | no unit | 86.5 cm",
        "{'body': {'bust': {'how': 'scan'}}} | /body/bust/value | 400 | needed | value",
        "{'body': {'bust': {'value': '94 cm', 'how': 'eye'}}} | /body/bust/how | 400 | No such name | tape-self",
        "{'measuredBy': 'tape-trianed'} | /measuredBy | 400 | No such name | \"tape-trained\"",
        "{'body': {'bust': '94 in', 'underbust': '77 cm'}} | /body/bust | 422 | outside | 94 cm",
        "{'body': {'bust': '77 cm', 'underbust': '94 cm'}} | /body/underbust | 422 | not below | swapped",
        "{'units': 'inches'} | /units | 400 | No such name | metric, imperial",
        "{'signs': [{'sign': 'neckline-gapes', 'sure': 0}]} | /signs/0/sure | 400 | from 0.01 to 1 | 0.8",
        "{'signs': [{'sign': 'neckline-gapes', 'sure': 1.2}]} | /signs/0/sure | 400 | from 0.01 to 1 | 0.8",
        "{'signs': [{'sign': 'neckline-gapes', 'sure': '80 %'}]} | /signs/0/sure | 400 | to 1 | 0.8",
        "{'signs': {}} | /signs | 400 | list | [ and ]",
        "{'signs': [{}]} | /signs/0/sign | 400 | needed | id",
        "{'signs': [7]} | /signs/0 | 400 | object | sign",
        "{'signs': [{'sign': 'neckline-gaps'}]} | /signs/0/sign | 400 | No such name | \"neckline-gapes\"",
        "{'signs': [{'sign': 'rides-up'}]} | /signs/0/sign | 400 | No such name | \"band-rides-up-at-the-back\"",
        "{'signs': [{'sign': 'Neckline gapes'}]} | /signs/0/sign | 400 | No such name | \"neckline-gapes\"",
        "{'signs': [{'sign': 'xyzzy'}]} | /signs/0/sign | 400 | No such name | Known are",
        "{'signs': [{'sign': 'neckline-gapes', 'seen': 'yes'}]} | /signs/0/seen | 400 | No such name | present, absent",
        "{'signs': [{'sign': 'neckline-gapes', 'place': 'frnt'}]} | /signs/0/place | 400 | No such name | \"front\"",
        "{'signs': [{'sign': 'neckline-gapes', 'side': 'l'}]} | /signs/0/side | 400 | No such name | left, right, both",
        "{'signs': [{'sign': 'neckline-gapes', 'degree': 3}]} | /signs/0/degree | 400 | text | quotes",
        "{'signs': [{'sign': 'neckline-gapes', 'amount': '9 m'}]} | /signs/0/amount | 422 | out of range | Check the unit",
        "{'signs': [{'sign': 'neckline-gapes', 'seen': 'absent', 'amount': '9 mm'}]} | /signs/0 | 422 | not seen | leave degree and amount",
        "{'signs': [{'sign': 'neckline-gapes'}, {'sign': 'neckline-gapes', 'side': 'left'}]} | /signs/1 | 422 | twice | which place and side",
        "{'pattern': {}} | /pattern | 400 | no pattern | sheet",
        "{'pattern': {'sheet': 'a', 'inline': {}}} | /pattern | 400 | two patterns | either",
        "{'pattern': {'sheet': 'no-such-sheet'}} | /pattern/sheet | 400 | No such name | Known are",
        "{'sizeCut': ''} | /sizeCut | 400 | empty | characters",
        "{'choices': []} | /choices | 400 | object | option",
        "{'garment': {'underband': '7 cm'}} | /garment/underband | 422 | out of range | Check the unit",
        "{'garment': {'strapWidth': '1 mm'}} | /garment/strapWidth | 422 | out of range | Check the unit",
        "{'garment': {'edges': [{'length': '54 cm'}]}} | /garment/edges/0/edge | 400 | needed | armhole",
        "{'garment': {'edges': [{'edge': 'nekline', 'length': '54 cm'}]}} | /garment/edges/0/edge | 400 | No such name | \"neckline\"",
        "{'garment': {'edges': [{'edge': 'neckline'}]}} | /garment/edges/0 | 422 | Nothing is said | its elastic",
        "{'garment': {'edges': [{'edge': 'armhole', 'length': '44 cm'}, {'edge': 'armhole', 'length': '45 cm'}]}} | /garment/edges/1 | 422 | twice | write one",
        "{'garment': {'edges': [{'edge': 'neckline', 'elastic': {'kind': 'soft'}}]}} | /garment/edges/0/elastic/kind | 400 | No such name | flat",
        "{'sizeSystem': 'uk'} | /sizeSystem | 422 | no size | sizeCut",
        "{'sizeSystem': 'ku', 'sizeCut': '34C'} | /sizeSystem | 400 | No such name | Did you mean",
        "{'sizeSystem': 'uk', 'sizeCut': 'M'} | /sizeSystem | 422 | no size of the name | as printed",
        "{'sizeSystem': 'eu', 'sizeCut': '34C'} | /sizeSystem | 422 | no size of the name | as printed",
        "{'sizeSystem': 'eu', 'pattern': {'sheet': 'quillmere-top'}} | /sizeSystem | 422 | own sheet | Leave out",
        "{'design': {'back': 'racer'}, 'pattern': {'sheet': 'quillmere-top'}} | /design | 422 | own sheet | Leave out",
        "{'design': {'back': 'round'}} | /design/back | 400 | No such name | \"rounded\"",
        "{'design': {'stretchAsked': '0.5'}} | /design/stretchAsked | 400 | no unit | unit",
        "{'design': {'stretchAsked': '500 %'}} | /design/stretchAsked | 422 | No pattern | up to 300 %",
        "{'design': {'drafted': {'underband': '66 mm'}}} | /design/drafted/underband | 422 | out of range | Check the unit",
        "{'cloth': {'man': {}}} | /cloth/man | 400 | No field | \"main\"",
        "{'cloth': {'main': {'around': {'marked': '10 cm'}}}} | /cloth/main/around/stretched | 400 | needed | 10 cm",
        "{'cloth': {'main': {'around': {'marked': '10 cm', 'stretched': '8 cm'}}}} | /cloth/main/around | 422 | shorter | three times",
        "{'cloth': {'main': {'along': {'marked': '10 cm', 'stretched': '14 cm'}}}} | /cloth/main/around | 400 | needed | around the body",
        "{'cloth': {'main': {'weight': '220 cm'}}} | /cloth/main/weight | 400 | a length | cloth weight",
        "{'cloth': {'main': {'weight': '9000 g/m²'}}} | /cloth/main/weight | 422 | No cloth | g/m²",
        "{'elastic': {'relaxed': '20 cm', 'stretched': '28 cm', 'load': '6 N'}} | /elastic/width | 400 | needed | 40 mm",
        "{'elastic': {'width': '40 mm', 'relaxed': '20 cm', 'stretched': '20 cm', 'load': '6 N'}} | /elastic | 422 | must stretch | known weight",
        "{'making': {'seams': 2.5}} | /making/seams | 400 | whole number | from 1 to 60",
        "{'making': {'seams': 99}} | /making/seams | 422 | out of range | from 1 to 60",
        "{'earlier': [{'adjustment': 'take-in-band'}]} | /earlier/0/adjustment | 400 | No such name | \"take-in-the-band\"",
        "{'earlier': [{'adjustment': 'take-in-the-band', 'outcome': 'good'}]} | /earlier/0/outcome | 400 | No such name | better, same, worse",
        "{'signs': [{'sign': 'neckline-gapes', 'amount': {}}]} | /signs/0/amount/value | 400 | needed | a range needs both",
        "{'signs': [{'sign': 'neckline-gapes', 'amount': {'from': '1 cm'}}]} | /signs/0/amount/to | 400 | needed | a range needs both",
        "{'signs': [{'sign': 'neckline-gapes', 'amount': {'value': '1 cm', 'to': '2 cm'}}]} | /signs/0/amount | 400 | two amounts | from",
        "{'signs': [{'sign': 'neckline-gapes', 'amount': {'from': '2 cm', 'to': '1 cm'}}]} | /signs/0/amount | 422 | below its beginning | smaller",
        "{'signs': [{'sign': 'neckline-gapes', 'amount': {'value': '1 cm', 'places': 0}}]} | /signs/0/amount/places | 422 | out of range | from 1 to 20",
        "{'signs': [{'sign': 'neckline-gapes', 'amount': {'value': '10 in', 'places': 3}}]} | /signs/0/amount | 422 | All places together | 19 5/8 in",
        "{'signs': [{'sign': 'neckline-gapes', 'when': 'after-an-our'}]} | /signs/0/when | 400 | No such name | \"after-an-hour\"",
        "{'signs': [{'sign': 'neckline-gapes', 'when': ['always', 'always']}]} | /signs/0/when/1 | 422 | twice | each time once",
        "{'fine': ['hands']} | /fine/0 | 400 | No such name | band",
        "{'fine': ['band', 'band']} | /fine/1 | 422 | twice | each area once",
        "{'trials': [{'amount': '1 cm'}]} | /trials/0/adjustment | 400 | needed | id",
        "{'trials': [{'adjustment': 'shorten-the-straps', 'how': 'glued'}]} | /trials/0/how | 400 | No such name | pinned",
        "{'trials': [{'adjustment': 'shorten-the-straps', 'outcome': 'wrong'}]} | /trials/0/outcome | 400 | No such name | right",
        "{'earlier': [{'outcome': 'same'}]} | /earlier/0/adjustment | 400 | needed | id",
        "{'earlier': [{'adjustment': 'shorten-the-straps', 'size': '75C'}]} | /earlier/0 | 400 | a change and a size | two entries",
        "{'earlier': [{'size': '75C', 'amount': '1 cm'}]} | /earlier/0/amount | 400 | no amount | out",
        "{'earlier': [{'size': '75C', 'better': ['neckline-gapes'], 'worse': ['neckline-gapes']}]} | /earlier/0 | 422 | as better and as worse | once",
        "{'earlier': [{'size': '75C', 'better': ['neckline-gaps']}]} | /earlier/0/better/0 | 400 | No such name | \"neckline-gapes\"",
        "{'earlier': [{'size': '75C', 'worse': ['skin-goes-numb']}]} | /earlier/0/worse/0 | 422 | may be a danger | signs",
        "{'circumstances': {'nursing': 'yes'}} | /circumstances/nursing | 400 | Yes or no | true or false",
        "{'circumstances': {'monthsSinceOperation': -1}} | /circumstances/monthsSinceOperation | 422 | out of range | from 0",
        "{'whyNot': ['band-too-lnog']} | /whyNot/0 | 400 | No such name | \"band-too-long\"",
        "{'whyNot': ['band-too-long', 'band-too-long']} | /whyNot/1 | 422 | twice | once",
      })
  void a_fault_is_reported_with_its_pointer_and_remedy(
      String json, String pointer, int status, String problem, String remedy) {
    FaultyRequest refusal = refused(json);
    assertEquals(1, refusal.count(), () -> refusal.faults().toString());
    Fault fault = refusal.faults().get(0);
    assertEquals(pointer == null ? "" : pointer, fault.pointer());
    assertEquals(status, refusal.status());
    assertTrue(fault.problem().contains(problem), fault.problem());
    assertTrue(fault.remedy().contains(remedy), fault.remedy());
  }

  @Test
  void all_faults_are_named_at_once_and_one_unreadable_makes_all_of_it_so() {
    FaultyRequest refusal =
        refused("{'body': {'bust': '94 in', 'underbust': 77}, 'signs': [{'sign': 'x'}], 'y': 1}");
    assertEquals(
        List.of("/y", "/body/underbust", "/body/bust", "/signs/0/sign"),
        refusal.faults().stream().map(Fault::pointer).toList());
    assertEquals(400, refusal.status());
  }

  @Test
  void a_size_that_is_no_size_is_named_beside_a_sign_that_is_none() {
    FaultyRequest refusal =
        refused("{'sizeCut': 'banana', 'signs': [{'sign': 'banana'}, {'sign': 'neckline-gapes'}]}");
    assertEquals(
        Set.of("/sizeCut", "/signs/0/sign"),
        refusal.faults().stream().map(Fault::pointer).collect(Collectors.toSet()));
    for (String size : List.of("M", "12", "2X", "75", "80C", "C75", "34DD", "S-M")) {
      assertEquals(size, read("{'sizeCut': '" + size + "', " + SIGN + "}").sizeCut());
    }
  }

  @Test
  void faults_beyond_a_hundred_are_counted_but_not_listed() {
    String fields = String.join(",", Collections.nCopies(1, "'a0': 1"));
    for (int i = 1; i < 150; i++) {
      fields += ", 'a" + i + "': 1";
    }
    FaultyRequest refusal = refused("{" + fields + "}");
    assertEquals(150, refusal.count());
    assertEquals(100, refusal.faults().size());
  }

  @Test
  void lists_above_their_caps_are_refused_whole() {
    String sign = "{'sign': 'neckline-gapes'}";
    assertEquals(
        "/signs",
        refused("{'signs': [" + String.join(",", Collections.nCopies(61, sign)) + "]}")
            .faults()
            .get(0)
            .pointer());
    String change = "{'adjustment': 'take-in-the-band'}";
    assertEquals(
        "/earlier",
        refused("{'earlier': [" + String.join(",", Collections.nCopies(21, change)) + "]}")
            .faults()
            .get(0)
            .pointer());
    assertEquals(
        20,
        read("{'earlier': [" + String.join(",", Collections.nCopies(20, change)) + "]}")
            .earlier()
            .size());
  }

  @Test
  void an_unlikely_body_is_no_fault() {
    assertEquals(
        950, read("{'body': {'bust': '95 cm', 'underbust': '93 cm'}}").body().bust().value().mm());
  }

  @Test
  void the_first_length_decides_the_units_unless_they_are_named() {
    assertEquals(
        UnitSystem.IMPERIAL, read("{'body': {'bust': '37 in', 'underbust': '77 cm'}}").units());
    assertEquals(
        UnitSystem.METRIC, read("{'body': {'underbust': '77 cm', 'bust': '37 in'}}").units());
    assertEquals(
        UnitSystem.METRIC,
        read("{'body': {'bust': '37 in', 'underbust': '77 cm'}, 'units': 'metric'}").units());
    assertEquals(UnitSystem.METRIC, read("{" + SIGN + "}").units());
  }

  @Test
  void a_measurement_has_the_error_of_how_it_was_taken() {
    Fitting fitting =
        read(
            "{'body': {'bust': {'value': '94 cm', 'how': 'scan'}, 'underbust': '77 cm'},"
                + " 'measuredBy': 'tape-trained'}");
    assertEquals(MeasuringMethod.SCAN.girthSdMm(), fitting.body().bust().sdMm());
    assertEquals(MeasuringMethod.TAPE_TRAINED.girthSdMm(), fitting.body().underbust().sdMm());
    assertEquals(MeasuringMethod.SCAN, fitting.measuredHow().get("bust").get(0).method());
    assertNull(fitting.body().named("upperChest"));
  }

  @Test
  void two_like_measurings_are_averaged_and_halve_the_variance() {
    Fitting fitting = read("{'body': {'bust': ['93 cm', '95 cm'], 'underbust': '77 cm'}}");
    assertEquals(940, fitting.body().bust().value().mm(), 1e-9);
    // The variance of a mean of two equal errors is half of one: any statistics handbook.
    assertEquals(
        MeasuringMethod.TAPE_SELF.girthSdMm() / Math.sqrt(2), fitting.body().bust().sdMm(), 1e-9);
  }

  @Test
  void left_and_right_of_one_sign_are_two_reports() {
    Fitting fitting =
        read(
            "{'signs': [{'sign': 'neckline-gapes', 'side': 'left', 'amount': '1/2 in'},"
                + " {'sign': 'neckline-gapes', 'side': 'right', 'seen': 'absent'}]}");
    assertEquals(12.7, fitting.signs().get(0).amount().mm(), 1e-9);
    assertTrue(fitting.signs().get(0).present());
    assertTrue(!fitting.signs().get(1).present());
  }

  @Test
  void a_shipped_sheet_knows_its_sizes_and_choices() {
    String pattern = "'pattern': {'sheet': '" + Names.SHEET + "'}, " + SIGN;
    assertEquals(Names.SIZE, read("{" + pattern + ", 'sizeCut': '" + Names.SIZE + "'}").sizeCut());
    assertEquals(
        "/sizeCut", refused("{" + pattern + ", 'sizeCut': '999Z'}").faults().get(0).pointer());
    assertEquals(
        "/choices/wings",
        refused("{" + pattern + ", 'choices': {'wings': 'two'}}").faults().get(0).pointer());
    String choice = Names.SHEETS.shipped().get(0).choices().get(0).id();
    assertEquals(
        "/choices/" + choice,
        refused("{" + pattern + ", 'choices': {'" + choice + "': 'no-such'}}")
            .faults()
            .get(0)
            .pointer());
  }

  @Test
  void a_sheet_sent_along_has_its_faults_named_within_the_request() {
    for (Fault fault : refused("{'pattern': {'inline': {'id': 7}}, " + SIGN + "}").faults()) {
      assertTrue(fault.pointer().startsWith("/pattern/inline"), fault.pointer());
    }
  }

  @Test
  void a_cloth_test_a_seam_allowance_or_a_circumstance_is_something_to_go_on() {
    read("{'cloth': {'main': {'around': {'marked': '10 cm', 'stretched': '16 cm'}}}}");
    read("{'elastic': {'cut': '66 cm'}}");
    read("{'making': {'seamAllowancePlanned': '10 mm', 'seamAllowanceSewn': '13 mm'}}");
    read("{'circumstances': {'impact': 'high'}}");
    read("{'body': {'underbust': '77 cm'}, 'garment': {'underband': '70 cm'}}");
  }

  /** Independent errors add up as squares (JCGM 100:2008, 5.1.2). */
  @Test
  void a_range_counts_by_its_middle_and_half_of_it_joins_the_error() {
    GivenAmount range = amount("{'from': '1 cm', 'to': '2 cm'}");
    assertEquals(15, range.mm(), 1e-9);
    assertEquals(Math.sqrt(4 * 4 + 5 * 5), range.sdMm(4), 1e-9);
  }

  @Test
  void amounts_by_place_are_added_up() {
    assertEquals(20, amount("{'value': '1 cm', 'places': 2}").mm(), 1e-9);
    GivenAmount both = amount("{'from': '1 cm', 'to': '1.5 cm', 'places': 2}");
    assertEquals(25, both.mm(), 1e-9);
    assertEquals(Math.sqrt(2 * 4 * 4 + 5 * 5), both.sdMm(4), 1e-9);
  }

  private static GivenAmount amount(String json) {
    return read("{'signs': [{'sign': 'neckline-gapes', 'amount': " + json + "}]}")
        .signs()
        .get(0)
        .amount();
  }

  @Test
  void whatever_was_tried_is_something_to_go_on() {
    assertEquals(List.of("band"), read("{'fine': ['band']}").fine());
    assertTrue(
        read("{'trials': [{'adjustment': 'shorten-the-straps', 'outcome': 'right'}]}")
            .trials()
            .get(0)
            .isRight());
    assertEquals("75C", read("{'earlier': [{'size': '75C'}]}").earlierSizes().get(0).size());
  }

  @Test
  void one_time_or_several_are_read_and_other_times_are_other_reports() {
    Fitting fitting =
        read(
            "{'signs': [{'sign': 'neckline-gapes', 'when': ['by-evening', 'after-a-wash']},"
                + " {'sign': 'neckline-gapes', 'when': 'first-minutes', 'seen': 'absent'}]}");
    assertEquals(List.of("by-evening", "after-a-wash"), fitting.signs().get(0).when());
    assertEquals(List.of("first-minutes"), fitting.signs().get(1).when());
  }
}

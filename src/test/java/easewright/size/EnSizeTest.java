package easewright.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.measure.Length;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

// EN 13402-3 from an encyclopaedia (classes and examples); the printed bust table is computed from
// its classes.
class EnSizeTest {
  private static final String TABLE =
      """
      58-62|60|70-72|72-74|74-76|76-78|78-80|80-82|82-84|84-86|86-88
      63-67|65|75-77|77-79|79-81|81-83|83-85|85-87|87-89|89-91|91-93
      68-72|70|80-82|82-84|84-86|86-88|88-90|90-92|92-94|94-96|96-98
      73-77|75|85-87|87-89|89-91|91-93|93-95|95-97|97-99|99-101|101-103
      78-82|80|90-92|92-94|94-96|96-98|98-100|100-102|102-104|104-106|106-108
      83-87|85|95-97|97-99|99-101|101-103|103-105|105-107|107-109|109-111|111-113
      88-92|90|100-102|102-104|104-106|106-108|108-110|110-112|112-114|114-116|116-118
      93-97|95|105-107|107-109|109-111|111-113|113-115|115-117|117-119|119-121|121-123
      98-102|100|110-112|112-114|114-116|116-118|118-120|120-122|122-124|124-126|126-128
      103-107|105|115-117|117-119|119-121|121-123|123-125|125-127|127-129|129-131|131-133
      108-112|110|120-122|122-124|124-126|126-128|128-130|130-132|132-134|134-136|136-138
      """;
  private static final String[] CUPS = {"AA", "A", "B", "C", "D", "E", "F", "G", "H"};

  static Stream<Arguments> cells() {
    return TABLE.lines().map(line -> line.split("\\|")).flatMap(EnSizeTest::cellsOfRow);
  }

  private static Stream<Arguments> cellsOfRow(String[] row) {
    return Stream.iterate(0, i -> i < CUPS.length, i -> i + 1)
        .map(i -> Arguments.of(row[0], Integer.parseInt(row[1]), CUPS[i], row[i + 2]));
  }

  @ParameterizedTest
  @MethodSource("cells")
  void every_printed_cell_is_reached_from_its_nominal_band(
      String underbust, int band, String cup, String bust) {
    int[] range = ends(bust);
    Designation cell = new Designation(SizeSystem.EN, band, cup);
    assertEquals(Range.ofCm(range[0], range[1]), cell.nominalBust());
    assertEquals(Optional.of(cell), en(band, range[0] + 0.1));
    assertEquals(Optional.of(cell), en(band, range[1]));
    assertEquals(Optional.of(cell), en(band, (range[0] + range[1]) / 2.0));
  }

  @ParameterizedTest
  @MethodSource("cells")
  void every_underbust_of_a_printed_row_gets_the_cup_of_its_own_difference(
      String underbust, int band, String cup, String bust) {
    int[] under = ends(underbust);
    for (int cm = under[0]; cm <= under[1]; cm++) {
      int difference = ends(bust)[1] - band;
      assertEquals(Optional.of(new Designation(SizeSystem.EN, band, cup)), en(cm, cm + difference));
    }
  }

  @ParameterizedTest
  @CsvSource({"87, 107, 85 D", "89, 108, 90 D", "82, 100, 80 C"})
  void the_worked_examples_come_out(double underbust, double bust, String label) {
    assertEquals(label, en(underbust, bust).orElseThrow().label());
  }

  @Test
  void a_bust_outside_the_printed_cell_still_gets_the_size_of_its_difference() {
    Designation size = en(87, 107).orElseThrow();
    assertTrue(!size.nominalBust().contains(1070));
  }

  // Class "12–14" is more than 12 and at most 14 cm: EN 13402-3.
  @ParameterizedTest
  @CsvSource({"12, AA", "12.1, A", "14, A", "14.1, B", "20, D", "20.1, E"})
  void a_cup_class_excludes_its_lower_and_includes_its_upper_edge(double difference, String cup) {
    assertEquals(cup, en(75, 75 + difference).orElseThrow().cup());
  }

  // The standard does not define the half-step; this is the documented rule here.
  @ParameterizedTest
  @CsvSource({"72.4, 70", "72.5, 70", "72.6, 75"})
  void an_underbust_on_the_half_step_takes_the_smaller_band(double underbust, int band) {
    assertEquals(band, en(underbust, underbust + 15).orElseThrow().band());
  }

  @Test
  void girths_beyond_the_system_get_no_size() {
    assertEquals(Optional.empty(), en(75, 85)); // 10 cm is below AA, "more than 10"
    assertEquals(Optional.empty(), en(75, 120));
    assertEquals(Optional.empty(), en(40, 55));
    assertEquals(Optional.empty(), en(75, 70));
  }

  // Index of equal nominal cups, (EN band − 60)/5 + cup step: common practice. 75 B and 80 A.
  @Test
  void sisters_share_the_index_and_their_nominal_busts_differ_by_three_centimetres() {
    Designation size = new Designation(SizeSystem.EN, 75, "B");
    assertEquals(List.of("70 C", "80 A"), size.sisters().stream().map(Designation::label).toList());
    Designation sister = size.sister(1).orElseThrow();
    assertEquals(size.sisterIndex(), sister.sisterIndex());
    assertEquals(30, sister.nominalBust().hiMm() - size.nominalBust().hiMm(), 1e-9);
    assertEquals(Optional.empty(), new Designation(SizeSystem.EN, 75, "AA").sister(1));
  }

  private static Optional<Designation> en(double underbustCm, double bustCm) {
    return SizeSystem.EN.of(Length.ofCm(underbustCm), Length.ofCm(bustCm));
  }

  private static int[] ends(String range) {
    return Arrays.stream(range.split("-")).mapToInt(Integer::parseInt).toArray();
  }
}

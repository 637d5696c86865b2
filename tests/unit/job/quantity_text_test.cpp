// SPDX-License-Identifier: MIT
#include "job/quantity_text.h"

#include <catch2/catch.hpp>

using namespace strikeoff;

namespace {

template <class T>
T value_of(const char* text) {
  const auto parsed = parse_quantity<T>(text);
  INFO(text);
  if (const auto* error = std::get_if<TextError>(&parsed)) FAIL(error->message);
  return std::get<T>(parsed);
}

template <class T>
TextError error_of(const char* text) {
  const auto parsed = parse_quantity<T>(text);
  INFO(text);
  REQUIRE(std::holds_alternative<TextError>(parsed));
  return std::get<TextError>(parsed);
}

double mm(const char* text) {
  return value_of<Length>(text).in_mm();
}

}  // namespace

TEST_CASE("a length is read exactly in every form people write", "[job]") {
  const Length bench = Length::inches(94.5);
  for (const char* text : {"94.5 in",
                           "94 1/2 in",
                           "94-1/2 in",
                           "94 1/2 inches",
                           "94½ in",
                           "94 ½ in",
                           "94 1⁄2\"",
                           "7 ft 10 1/2 in",
                           "7ft 10.5in",
                           "7' 10 1/2\"",
                           "7'-10 1/2\"",
                           "7’ 10½”",
                           "7′ 10½″",
                           "7' 10 1/2''",
                           "7 feet 10 1/2 inches",
                           "  7 FT 10 1/2 IN  ",
                           "7.875 ft",
                           "2400.3 mm",
                           "240.03 cm",
                           "2.4003 m",
                           "2 yd 1 ft 10 1/2 in",
                           "94 1/2 in.",
                           "189/2 in"}) {
    INFO(text);
    CHECK(value_of<Length>(text) == bench);
  }
  CHECK(value_of<Length>("1/64 in") == Length::nm(396875));
  CHECK(value_of<Length>("2.39 m") == Length::mm(2390));
  CHECK(value_of<Length>("-3/4 in") == Length::inches(-0.75));
  CHECK(value_of<Length>("−20 mm") == Length::mm(-20));
  CHECK(value_of<Length>(".5 in") == Length::inches(0.5));
  CHECK(value_of<Length>("1/3 in").in_in() == Approx(1 / 3.0).epsilon(1e-9));
  for (const auto& [text, eighths] : {std::pair{"⅛ in", 1},
                                      {"¼ in", 2},
                                      {"⅜ in", 3},
                                      {"½ in", 4},
                                      {"⅝ in", 5},
                                      {"¾ in", 6},
                                      {"⅞ in", 7}}) {
    CHECK(value_of<Length>(text) == Length::inches(eighths / 8.0));
  }
}

// NIST Handbook 44, appendix C (2024), and NIST SP 811, appendix B.8: exact or to all digits given.
TEST_CASE("units agree with NIST Handbook 44 and SP 811", "[job]") {
  CHECK(mm("1 in") == 25.4);
  CHECK(mm("1 ft") == 304.8);
  CHECK(mm("1 yd") == 914.4);
  CHECK(value_of<Mass>("1 lb").si() == 0.45359237);
  CHECK(value_of<Mass>("1 oz").si() == 0.028349523125);
  CHECK(value_of<Mass>("16 oz").si() == Approx(value_of<Mass>("1 lb").si()).epsilon(1e-14));
  CHECK(in_litres(value_of<Volume>("1 gal")) == Approx(3.785411784).epsilon(1e-14));
  CHECK(in_litres(value_of<Volume>("1 qt")) == Approx(0.946352946).epsilon(1e-14));
  CHECK(in_litres(value_of<Volume>("1 pt")) == Approx(0.473176473).epsilon(1e-14));
  CHECK(in_litres(value_of<Volume>("1 fl oz")) == Approx(0.0295735295625).epsilon(1e-14));
  CHECK(in_litres(value_of<Volume>("1 ft3")) == Approx(28.316846592).epsilon(1e-14));
  CHECK(in_litres(value_of<Volume>("1 yd3")) == Approx(764.554857984).epsilon(1e-14));
  CHECK(in_litres(value_of<Volume>("1 in3")) == Approx(0.016387064).epsilon(1e-14));
  CHECK(value_of<Volume>("1 ft3") / value_of<Volume>("1 gal") ==
        Approx(7.48051948052).epsilon(1e-11));
  CHECK(value_of<Volume>("1 fl oz") / value_of<Volume>("1 in3") ==
        Approx(1.8046875).epsilon(1e-14));
  CHECK(value_of<Volume>("1 yd3") / value_of<Volume>("1 ft3") == Approx(27).epsilon(1e-14));
  CHECK(value_of<Area>("1 ft2").si() == 0.09290304);
  CHECK(value_of<Density>("1 pcf").si() == Approx(16.01846337).epsilon(1e-9));
  CHECK(value_of<Pressure>("1 psi").si() == Approx(6894.757293).epsilon(1e-9));
  CHECK(value_of<Pressure>("1 psf").si() == Approx(47.88025898).epsilon(1e-9));
  CHECK(value_of<Speed>("1 mph").si() == 0.44704);
  CHECK(value_of<Speed>("1 km/h").si() == Approx(1 / 3.6).epsilon(1e-14));
  CHECK(value_of<Temperature>("40 F").in_c() == Approx(4.44444444).epsilon(1e-8));
  CHECK(value_of<Temperature>("50 F").in_c() == Approx(10).epsilon(1e-14));
  CHECK(value_of<Temperature>("95 °F").in_c() == Approx(35).epsilon(1e-14));
  CHECK(value_of<Temperature>("77F").in_c() == Approx(25).epsilon(1e-14));
  CHECK(value_of<Temperature>("-40 F").in_c() == Approx(-40).epsilon(1e-14));
}

TEST_CASE("every other quantity is read in the units of the trade", "[job]") {
  CHECK(value_of<Duration>("90 s") == seconds(90));
  CHECK(value_of<Duration>("1 h 30 min") == minutes(90));
  CHECK(value_of<Duration>("1.5 hours") == minutes(90));
  CHECK(value_of<Duration>("28 d") == days(28));
  CHECK(value_of<Volume>("2 qt 8 fl oz") == quarts(2) + fluid_ounces(8));
  CHECK(value_of<Volume>("0.45 cu ft") == cubic_feet(0.45));
  CHECK(value_of<Volume>("60 mL") == litres(0.06));
  CHECK(value_of<Volume>("0.013 m³") == litres(13));
  CHECK(value_of<Mass>("300 g") == kilograms(0.3));
  CHECK(value_of<Mass>("1 lb 8 oz").si() == Approx(pounds(1.5).si()).epsilon(1e-14));
  CHECK(value_of<Area>("12 ft²") == square_feet(12));
  CHECK(value_of<Pressure>("20 MPa") == megapascals(20));
  CHECK(value_of<Density>("150 lb/ft3") == pounds_per_ft3(150));
  CHECK(value_of<Speed>("2 m/s") == metres_per_second(2));
  CHECK(value_of<MolarEnergy>("40 kJ/mol") == kilojoules_per_mole(40));
  CHECK(value_of<Temperature>("20 C") == Temperature::celsius(20));
  CHECK(value_of<Percent>("10 %").fraction == 0.10);
  CHECK(value_of<Percent>("2.5%").fraction == 0.025);
}

TEST_CASE("a quantity of the wrong kind has the word code of the kind wanted", "[job]") {
  CHECK(error_of<Length>("3 kg").code == "not-a-length");
  CHECK(error_of<Area>("3 in").code == "not-an-area");
  CHECK(error_of<Volume>("3 in").code == "not-a-volume");
  CHECK(error_of<Mass>("3 L").code == "not-a-mass");
  CHECK(error_of<Temperature>("3 ft").code == "not-a-temperature");
  CHECK(error_of<Duration>("3 m").code == "not-a-duration");
  CHECK(error_of<Pressure>("3 kg").code == "not-a-pressure");
  CHECK(error_of<Speed>("3 min").code == "not-a-speed");
  CHECK(error_of<Density>("3 lb").code == "not-a-density");
  CHECK(error_of<MolarEnergy>("3 C").code == "not-an-energy");
  CHECK(error_of<Percent>("3 in").code == "not-a-percent");
}

TEST_CASE("a text that is no quantity says what is wrong with it", "[job]") {
  CHECK(error_of<Length>("").code == "not-a-length");
  CHECK(error_of<Length>("   ").code == "not-a-length");
  CHECK(error_of<Length>("in").code == "not-a-length");
  CHECK(error_of<Length>("-").code == "not-a-length");
  CHECK(error_of<Length>("92").code == "no-unit");
  CHECK(error_of<Length>("7 ft 8").code == "no-unit");
  CHECK(error_of<Length>("7 ft ft").code == "not-a-length");
  CHECK(error_of<Length>("1e3 mm").code == "unknown-unit");
  CHECK(error_of<Length>("5 in in").code == "not-a-length");
  CHECK(error_of<Length>("1.5 1/2 in").code == "bad-fraction");
  CHECK(error_of<Length>("1/2/3 in").code == "bad-fraction");
  CHECK(error_of<Length>("3 5/4 in").code == "bad-fraction");
  CHECK(error_of<Length>("1/0 in").code == "bad-fraction");
  CHECK(error_of<Length>("1/2.5 in").code == "bad-fraction");
  CHECK(error_of<Length>("nan in").code == "not-a-length");
  CHECK(error_of<Length>("inf mm").code == "not-a-length");
  CHECK(error_of<Length>("0x10 mm").code == "unknown-unit");
  CHECK(error_of<Length>(std::string(400, '9').append(" mm").c_str()).code == "too-large");
  CHECK(error_of<Temperature>("60 F 10 C").code == "not-a-temperature");
  CHECK(error_of<Length>("2,5 mm").help == "write \"2.5 mm\"");
  CHECK(error_of<Length>("2,500 mm").help == "write \"2500 mm\" or \"2.500 mm\"");
  CHECK(error_of<Length>("3 milimetres").help == "did you mean \"millimetres\"?");
}

TEST_CASE("a bare number is shown with the units it may have meant", "[job]") {
  CHECK(bare_number(Dimension::length, 76).help ==
        "write it as a text with its unit: \"76 in\", \"76 ft\", \"76 mm\", \"76 cm\" or \"76 m\"");
  CHECK(bare_number(Dimension::percent, 0.1).help == "write \"10 %\"");
  CHECK(bare_number(Dimension::percent, 15).help == "write \"15 %\"");
}

TEST_CASE("a quoted text cannot steer the terminal or flood it", "[job]") {
  CHECK(in_quotes("a\x1b[31mb\nc") == "\"a [31mb c\"");
  CHECK(in_quotes("\xC2\x9Bx") == "\" x\"");
  CHECK(in_quotes(std::string(61, 'x')) == '"' + std::string(60, 'x') + "...\"");
  CHECK(in_quotes("½") == "\"½\"");
}

using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reliability;

/// <summary>Mean squares of a complete table of I athletes by k tests.</summary>
internal readonly record struct MeanSquares(int Athletes, int Tests, double Between, double Columns, double Error, double Within)
{
    public static MeanSquares Of(IReadOnlyList<double[]> table)
    {
        int athletes = table.Count, tests = table[0].Length;
        var grand = Descriptive.Mean([.. table.SelectMany(row => row)]);
        double[] rows = [.. table.Select(row => Descriptive.Mean(row) - grand)];
        double[] columns = [.. Enumerable.Range(0, tests).Select(test => Descriptive.Mean([.. table.Select(row => row[test])]) - grand)];
        double error = 0, within = 0;
        for (var i = 0; i < athletes; i++)
        {
            for (var test = 0; test < tests; test++)
            {
                var deviation = table[i][test] - grand - rows[i];
                within += deviation * deviation;
                error += (deviation - columns[test]) * (deviation - columns[test]);
            }
        }

        return new MeanSquares(athletes, tests,
            tests * rows.Sum(row => row * row) / (athletes - 1),
            athletes * columns.Sum(column => column * column) / (tests - 1),
            error / ((athletes - 1.0) * (tests - 1)),
            within / (athletes * (tests - 1.0)));
    }
}

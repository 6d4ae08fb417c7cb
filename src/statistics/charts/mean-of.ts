import type { Chart } from './chart.ts';

/** Charts the means of so many values in a row, each in sigmas of such a mean. */
export class MeanOf implements Chart {
  private readonly chart: Chart;
  private readonly size: number;
  private sum = 0;
  private count = 0;

  constructor(chart: Chart, size: number) {
    this.chart = chart;
    this.size = size;
  }

  next(value: number): boolean {
    this.sum += value;
    if (++this.count < this.size) return false;
    const point = this.sum / Math.sqrt(this.size);
    this.sum = 0;
    this.count = 0;
    return this.chart.next(point);
  }

  restart(): void {
    this.sum = 0;
    this.count = 0;
    this.chart.restart();
  }
}
